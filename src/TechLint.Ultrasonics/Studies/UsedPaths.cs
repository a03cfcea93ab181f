using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Studies;

/// <summary>The stretch of sound path that a law spends inside the examined volume, in allowed legs and within its window; mm from the exit point.</summary>
internal static class UsedPaths
{
    /// <summary>Halvings of a leg: its ends inside the volume are known to a millionth of it.</summary>
    private const int Halvings = 20;

    /// <summary>A limit met by halving is met within this, mm.</summary>
    private const double Rounding = 1e-3;

    public static (double From, double To)? Of(PassSection section, SightLine line)
    {
        var curved = section.Rays.IsCurved ? section.OutsideDiameter : null;
        var frame = new PassFrame(section.Thickness, curved, section.Pass.ScanningSurface);
        var volume = VolumeRectangle.Of(section.Examination.Weld, section.Examination.Volume, section.Thickness, curved, section.Pass.ScanningSurface == Surface.Inside);
        var least = double.PositiveInfinity;
        var greatest = double.NegativeInfinity;
        for (var leg = 1; line.LegMask >> (leg - 1) != 0; leg++)
        {
            if (!line.Allows(leg)) continue;
            Use(0);
            Use(1);

            // Along a leg y, depth and path all run one way: where a limit lies between the ends, it is met once.
            foreach (var limit in (ReadOnlySpan<double>)[volume.FromY, volume.ToY]) UseAt(share => PlaceAt(share).Y - limit);
            foreach (var limit in (ReadOnlySpan<double>)[line.PathFrom, line.PathTo]) UseAt(share => PlaceAt(share).Path - limit);

            void Use(double share)
            {
                var (y, path) = PlaceAt(share);
                if (double.IsNaN(y) || path < line.PathFrom - Rounding || path > line.PathTo + Rounding) return;
                if (y < volume.FromY - Rounding || y > volume.ToY + Rounding) return;
                least = Math.Min(least, path);
                greatest = Math.Max(greatest, path);
            }

            void UseAt(Func<double, double> beyond)
            {
                var (low, high) = (0.0, 1.0);
                var atLow = beyond(low);
                if (!(atLow * beyond(high) < 0)) return;
                for (var step = 0; step < Halvings; step++)
                {
                    var middle = (low + high) / 2;
                    if (atLow * beyond(middle) > 0) low = middle;
                    else high = middle;
                }

                Use((low + high) / 2);
            }

            (double Y, double Path) PlaceAt(double share)
            {
                var outerZ = volume.FromZ + ((volume.ToZ - volume.FromZ) * share);
                return section.Rays.TryReach(line.Angle, frame.DepthAt(outerZ), leg, out var advance, out var path)
                    ? (frame.ToOuter * (line.ExitY + (line.Direction * advance)), path)
                    : (double.NaN, double.NaN);
            }
        }

        return greatest >= least ? (least, greatest) : null;
    }
}
