using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>How far the frame moves along the weld, in mm.</summary>
/// <remarks>
/// Open seam: run-on + length + run-off + spread of the stations. Girth weld: circumference on the scanning surface +
/// overlap + spread. Each further segment adds overlap + spread. A segment is what is scanned in one go, its overlap and spread included.
/// </remarks>
internal static class ScanLength
{
    /// <summary>A length this much (of a segment) over whole segments is rounding, not one segment more.</summary>
    private const double SegmentSlack = 1e-9;

    /// <summary>A seam in more pieces than this is a slip of a unit.</summary>
    private const int MostSegments = 1_000_000;

    /// <summary>Null where the length of the weld is not known, or a segment is too short to get on.</summary>
    public static double? Of(PassSection section, Acquisition acquisition) => In(section, acquisition)?.Length;

    /// <summary>The whole way, and in how many segments it is gone. All but the last are as long as a segment may be.</summary>
    public static (double Length, int Segments)? In(PassSection section, Acquisition acquisition)
    {
        var overlap = acquisition.Overlap.Millimetres;
        var spread = SpreadOf(section.Pass);
        double whole;
        if (acquisition.WeldLength is { } seam)
        {
            whole = acquisition.RunOn.Millimetres + seam.Millimetres + acquisition.RunOff.Millimetres + spread;
        }
        else if (section.Examination.Part.Curvature == Curvature.AlongWeld && section.ScanningDiameter is { } diameter)
        {
            whole = (Math.PI * diameter) + overlap + spread;
        }
        else
        {
            return null;
        }

        if (acquisition.SegmentAtMost is not { } segment || whole <= segment.Millimetres) return (whole, 1);
        var gained = segment.Millimetres - overlap - spread;
        if (!(gained > 0)) return null;
        var further = Math.Ceiling(((whole - segment.Millimetres) / gained) - SegmentSlack);
        return further < MostSegments ? (whole + (further * (overlap + spread)), (int)further + 1) : null;
    }

    /// <summary>Distance along the weld between the first and the last station.</summary>
    public static double SpreadOf(Pass pass)
    {
        var (first, last) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var probe in pass.Probes)
        {
            first = Math.Min(first, probe.Along.Millimetres);
            last = Math.Max(last, probe.Along.Millimetres);
        }

        return last > first ? last - first : 0;
    }
}
