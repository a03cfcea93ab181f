using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>The back wall's echo that changes its wave at the wall: longitudinal one way, transverse the other.</summary>
internal static class ConvertedWave
{
    private const int Narrowings = 80;

    /// <summary>Seconds; by least time over the place of the change (the time along the wall has one minimum).</summary>
    /// <param name="pair">The pair.</param>
    /// <param name="longitudinal">mm/s.</param>
    /// <param name="transverse">mm/s.</param>
    public static double BackWallTime(PairGeometry pair, double longitudinal, double transverse)
    {
        var frame = new SectionFrame(pair.Section);
        var (low, high) = (pair.LeftExitY, pair.RightExitY);
        for (var step = 0; step < Narrowings; step++)
        {
            var third = (high - low) / 3;
            if (TimeOver(low + third) < TimeOver(high - third)) high -= third;
            else low += third;
        }

        return TimeOver((low + high) / 2);

        double TimeOver(double y)
        {
            frame.TryLine(pair.LeftExitY, y, pair.Section.Thickness, out var down, out _);
            frame.TryLine(pair.RightExitY, y, pair.Section.Thickness, out var up, out _);
            return (down / longitudinal) + (up / transverse);
        }
    }
}
