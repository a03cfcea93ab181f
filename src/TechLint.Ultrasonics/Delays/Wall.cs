using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Delays;

/// <summary>The two surfaces of the part as mirrors, in the plane of incidence.</summary>
/// <param name="Scanned">Under the probe; even bounces after the first meet it from below.</param>
/// <param name="Opposite">The other one.</param>
internal readonly record struct Wall(Contour Scanned, Contour Opposite)
{
    /// <param name="ray">In the part.</param>
    /// <param name="bounces">So many bounces before: none or an even number means that the ray runs down.</param>
    /// <param name="path">To the next surface.</param>
    /// <param name="normal">There, downwards.</param>
    public bool TryMeet(PlaneRay ray, int bounces, out double path, out (double X, double Z) normal)
    {
        double normalX, normalZ;
        var met = (bounces & 1) == 0
            ? Opposite.TryEnter(ray, out path, out normalX, out normalZ)
            : Scanned.TryLeave(ray, out path, out normalX, out normalZ);
        normal = (normalX, normalZ);
        return met && path > 0;
    }

    /// <summary>Mirrors the ray at the next surface: <c>d' = d − 2 (d·n) n</c>.</summary>
    public bool TryBounce(ref PlaneRay ray, int bounces, out double path)
    {
        if (!TryMeet(ray, bounces, out path, out var normal)) return false;
        var twice = 2 * ((ray.Dx * normal.X) + (ray.Dz * normal.Z));
        ray = ray.After(path) with { Dx = ray.Dx - (twice * normal.X), Dz = ray.Dz - (twice * normal.Z) };
        return true;
    }
}
