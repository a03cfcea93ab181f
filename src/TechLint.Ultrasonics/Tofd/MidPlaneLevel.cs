using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>Transmit × receive of a pair along its mid-plane, over depth in mm.</summary>
internal readonly struct MidPlaneLevel(PairGeometry pair, Directivity transmit, Directivity receive)
{
    private const int Samples = 96;
    private const int Halvings = 24;

    private readonly SectionFrame frame = new(pair.Section);

    public double At(double depth)
    {
        if (!frame.TryLine(pair.LeftExitY, pair.MiddleY, depth, out _, out var left)
            || !frame.TryLine(pair.RightExitY, pair.MiddleY, depth, out _, out var right)) return 0;
        return pair.TransmitsFromLeft ? transmit.At(left) * receive.At(-right) : transmit.At(-right) * receive.At(left);
    }

    /// <summary>The loudest depth within the wall. A pair of equal probes is loudest where its axes cross, if they cross in it.</summary>
    public (double Level, double Depth) Loudest(double wall, double intersection)
    {
        var best = (Level: 0.0, Depth: 0.0);
        for (var sample = 0; sample <= Samples + 1; sample++)
        {
            // The wall itself, not the wall by way of a division: the last digit must not leave the loudest depth out.
            var depth = sample < Samples ? wall * sample / Samples : sample == Samples ? wall : intersection;
            if (!(depth >= 0 && depth <= wall)) continue;
            var level = At(depth);
            if (level > best.Level) best = (level, depth);
        }

        return best;
    }

    /// <summary>Where the level first falls below the least one on the way from a depth to an end of the wall.</summary>
    public double Edge(double inside, double end, double least)
    {
        var (start, outside) = (inside, double.NaN);
        for (var sample = 1; sample <= Samples; sample++)
        {
            var depth = start + ((end - start) * sample / Samples);
            if (At(depth) >= least)
            {
                inside = depth;
                continue;
            }

            outside = depth;
            break;
        }

        if (double.IsNaN(outside)) return end;
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (inside + outside) / 2;
            if (At(middle) >= least) inside = middle;
            else outside = middle;
        }

        return inside;
    }
}
