using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// What a pair leaves unseen beside its mid-plane. Signals are told apart by time alone, and places of equal time lie on an ellipse about the
/// index points: beside the middle it rises from the back wall (what lies under it comes after the back wall's echo begins to hide
/// it) and towards the scanning surface. mm, in the pass's own frame.
/// </summary>
internal static class OffCentreSight
{
    private const int Halvings = 60;

    /// <summary>Depth under a place of the scanning surface whose transmit + receive path this is; NaN outside the index points, or where the line leaves the part.</summary>
    public static double DepthOf(PairGeometry pair, double y, double path)
    {
        if (!(y > pair.LeftExitY && y < pair.RightExitY)) return double.NaN;
        var frame = new SectionFrame(pair.Section);

        // Under the chord a place farther down is farther from both probes.
        var (low, high) = (Highest(pair, y), pair.Section.Thickness);
        if (PathOf(frame, pair, y, low) >= path) return low;
        if (PathOf(frame, pair, y, high) <= path) return high;
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (PathOf(frame, pair, y, middle) < path) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    public static double PathOf(SectionFrame frame, PairGeometry pair, double y, double z)
    {
        frame.TryLine(pair.LeftExitY, y, z, out var left, out _);
        frame.TryLine(pair.RightExitY, y, z, out var right, out _);
        return left + right;
    }

    /// <summary>The least depth of the wall under a place that a straight line from both probes reaches: below the chord, or below the tangents from inside.</summary>
    private static double Highest(PairGeometry pair, double y)
    {
        if (pair.Section.Bend == 0) return 0;
        var frame = new SectionFrame(pair.Section);
        var (low, high) = (0.0, pair.Section.Thickness);
        if (IsStraight(low)) return 0;
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (IsStraight(middle)) high = middle;
            else low = middle;
        }

        return high;

        // From outside only the chord counts: the bore that may stand in the way lies below, not above.
        bool IsStraight(double z) => pair.Section.Bend > 0
            ? pair.IsBelowChord(y, z)
            : frame.TryLine(pair.LeftExitY, y, z, out _, out _) && frame.TryLine(pair.RightExitY, y, z, out _, out _);
    }
}
