using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>The back wall's echo that changes its wave at the wall: longitudinal one way, transverse the other.</summary>
internal static class ConvertedWave
{
    private const int Narrowings = 80;

    /// <summary>A least time this near (mm) to an end of the places in sight lies on that end, where the ray grazes the bore.</summary>
    private const double Grazing = 1e-6;

    /// <summary>
    /// Seconds; by least time over the place of the change (the time along the wall has one minimum). Around a pipe a place is in sight of an exit point
    /// while the polar angle between them is at most <c>acos(Ri/Ro)</c>: beyond it the straight line runs through the bore. Only places in sight of both count.
    /// </summary>
    /// <param name="pair">The pair.</param>
    /// <param name="longitudinal">mm/s.</param>
    /// <param name="transverse">mm/s.</param>
    /// <returns>NaN where the least time lies on the edge of what both see: there is no echo, only a ray that grazes the bore.</returns>
    public static double BackWallTime(PairGeometry pair, double longitudinal, double transverse)
    {
        var frame = new SectionFrame(pair.Section);
        var reach = InSight(pair.Section);
        var (low, high) = (Math.Max(pair.LeftExitY, pair.RightExitY - reach), Math.Min(pair.RightExitY, pair.LeftExitY + reach));
        if (!(low <= high)) return double.NaN;
        var (from, to) = (low, high);
        for (var step = 0; step < Narrowings; step++)
        {
            var third = (high - low) / 3;
            if (TimeOver(low + third) < TimeOver(high - third)) high -= third;
            else low += third;
        }

        var place = (low + high) / 2;
        return place - from < Grazing || to - place < Grazing ? double.NaN : TimeOver(place);

        double TimeOver(double y)
        {
            frame.TryLine(pair.LeftExitY, y, pair.Section.Thickness, out var down, out _);
            frame.TryLine(pair.RightExitY, y, pair.Section.Thickness, out var up, out _);
            return (down / longitudinal) + (up / transverse);
        }
    }

    /// <summary>How far along the scanning surface the opposite one is in sight of a place; without end on a flat wall.</summary>
    private static double InSight(SectionRays section)
    {
        if (!section.IsCurved) return double.PositiveInfinity;
        var opposite = section.ScanRadius - (section.Bend * section.Thickness);
        return section.ScanRadius * Math.Acos(Math.Min(section.ScanRadius, opposite) / Math.Max(section.ScanRadius, opposite));
    }
}
