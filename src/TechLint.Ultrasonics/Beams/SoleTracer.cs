namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// Shoots a ray from an element through its wedge's sole, and the couplant under it where there is a gap, into the part: Snell's law in
/// vectors at each surface. The direct counterpart of <see cref="Sole"/>, which solves for an angle; this one takes a direction. mm, rad, mm/s.
/// </summary>
/// <param name="Sole">The wedge's lower face.</param>
/// <param name="Surface">The scanning surface, where it is not the sole itself.</param>
/// <param name="WedgeSpeed">Longitudinal.</param>
/// <param name="CouplantSpeed">Of what fills the gap.</param>
internal readonly record struct SoleTracer(Contour Sole, Contour? Surface, double WedgeSpeed, double CouplantSpeed)
{
    public Contour Scanned => Surface ?? Sole;

    /// <param name="place">u of the element.</param>
    /// <param name="height">Above the contact plane.</param>
    /// <param name="direction">In the wedge, from the normal of the contact plane, forward positive.</param>
    /// <param name="partSpeed">mm/s.</param>
    /// <param name="traced">The ray at its entry into the part.</param>
    /// <returns>False where the ray does not get there.</returns>
    public bool TryShoot(double place, double height, double direction, double partSpeed, out TracedRay traced)
    {
        traced = default;
        var (sine, cosine) = Math.SinCos(direction);
        var ray = new PlaneRay(place, -height, sine, cosine);
        if (!Sole.TryEnter(ray, out var wedgePath, out var normalX, out var normalZ)) return false;
        var time = wedgePath / WedgeSpeed;
        ray = ray.After(wedgePath);
        if (Surface is { } surface)
        {
            if (!TryRefract(ref ray, normalX, normalZ, CouplantSpeed / WedgeSpeed)) return false;
            if (!surface.TryEnter(ray, out var gapPath, out normalX, out normalZ)) return false;
            time += gapPath / CouplantSpeed;
            ray = ray.After(gapPath);
            if (!TryRefract(ref ray, normalX, normalZ, partSpeed / CouplantSpeed)) return false;
        }
        else if (!TryRefract(ref ray, normalX, normalZ, partSpeed / WedgeSpeed))
        {
            return false;
        }

        var angle = Math.Atan2((ray.Dx * normalZ) - (ray.Dz * normalX), (ray.Dx * normalX) + (ray.Dz * normalZ));
        traced = new TracedRay(ray, time, wedgePath, angle);
        return true;
    }

    /// <summary>Snell's law in vectors: the part of the direction along the surface grows by the ratio of the speeds.</summary>
    private static bool TryRefract(ref PlaneRay ray, double normalX, double normalZ, double ratio)
    {
        var into = (ray.Dx * normalX) + (ray.Dz * normalZ);
        var (alongX, alongZ) = (ratio * (ray.Dx - (into * normalX)), ratio * (ray.Dz - (into * normalZ)));
        var rest = 1 - ((alongX * alongX) + (alongZ * alongZ));
        if (!(into > 0) || !(rest >= 0)) return false;
        var root = Math.Sqrt(rest);
        ray = ray with { Dx = alongX + (root * normalX), Dz = alongZ + (root * normalZ) };
        return true;
    }
}

/// <param name="Ray">At its entry into the part.</param>
/// <param name="Time">From the element to there, s.</param>
/// <param name="WedgePath">mm.</param>
/// <param name="PartAngle">In the part, from the local normal, forward positive.</param>
internal readonly record struct TracedRay(PlaneRay Ray, double Time, double WedgePath, double PartAngle);
