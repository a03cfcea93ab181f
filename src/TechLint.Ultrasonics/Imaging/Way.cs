using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>
/// One way of an image through the part, seen from the array: leg after leg, each with its own wave, mirrored in between at the opposite and at the
/// scanning surface by turns. Angles in rad from the local normal where the ray enters the part, towards the weld positive; lengths in mm.
/// </summary>
/// <remarks>
/// Refraction and every mirror, converting or not, keep <c>sin i / v</c> on a flat section and <c>r sin i / v</c> on a curved one (Snell's law; the law of
/// sines in the triangle of ray and axis). So the angle of the first leg gives those of all others in closed form, <c>sin θk = sin θ1 vk / v1</c>, and the
/// path that meets a point and keeps that number is the one of stationary time (Fermat). On a curved section scanned from outside, a ray beyond its
/// nearest place to the axis does not count, as for every other beam.
/// </remarks>
internal sealed class Way
{
    private readonly SectionRays rays;
    private readonly double[] speeds;

    /// <param name="rays">The section.</param>
    /// <param name="speeds">Of each leg, from the array outward, mm/s.</param>
    public Way(SectionRays rays, double[] speeds)
    {
        this.rays = rays;
        this.speeds = speeds;
        var cap = 1.0;
        for (var leg = 0; leg < speeds.Length; leg++)
        {
            var runsFull = leg < speeds.Length - 1 || (leg & 1) == 1;
            cap = Math.Min(cap, speeds[0] / speeds[leg] * (runsFull ? Math.Sin(rays.GreatestReachingAngle) : 1));
        }

        GreatestSine = cap;
    }

    public int Legs => speeds.Length;

    public double FirstSpeed => speeds[0];

    /// <summary>Of the first leg's angle: beyond it some leg has no real ray, or misses the opposite surface.</summary>
    public double GreatestSine { get; }

    /// <summary>Mirrors on the way.</summary>
    public int Bounces => speeds.Length - 1;

    /// <summary>From the entry to the end of a leg (1, 2, …), along the scanning surface; NaN where the ray does not get there.</summary>
    public double AdvanceToBounce(double angle, int bounce)
    {
        var sum = 0.0;
        for (var leg = 0; leg < bounce; leg++) sum += Full(angle, leg).Advance;
        return Math.CopySign(sum, angle);
    }

    /// <summary>The ray's arrival at a depth in the last leg; its advance is NaN where it does not get there.</summary>
    public Arrival At(double angle, double depth)
    {
        var (advance, spread, time, path) = (0.0, 0.0, 0.0, 0.0);
        var last = speeds.Length - 1;
        for (var leg = 0; leg <= last; leg++)
        {
            var isPart = leg == last;
            var one = isPart && (leg & 1) == 0 ? Reach(angle, leg, depth) : Full(angle, leg);
            if (isPart && (leg & 1) == 1)
            {
                var rest = Reach(angle, leg, depth);
                one = (one.Advance - rest.Advance, one.Path - rest.Path);
            }

            advance += one.Advance;
            path += one.Path;
            spread += one.Path * speeds[leg] / speeds[0];
            time += one.Path / speeds[leg];
        }

        return new Arrival(Math.CopySign(advance, angle), path, spread, time);
    }

    /// <summary>Between the last leg and the local normal at a depth.</summary>
    public double IncidenceAt(double angle, double depth)
    {
        var sine = Math.Sin(angle) * speeds[^1] / speeds[0];
        return Math.Asin(rays.IsCurved ? sine * rays.ScanRadius / (rays.ScanRadius - (rays.Bend * depth)) : sine);
    }

    private (double Advance, double Path) Full(double angle, int leg) => Reach(angle, leg, rays.Thickness);

    private (double Advance, double Path) Reach(double angle, int leg, double depth)
    {
        var own = Math.Asin(Math.Abs(Math.Sin(angle)) * speeds[leg] / speeds[0]);
        return rays.TryReach(own, depth, 1, out var advance, out var path) ? (advance, path) : (double.NaN, double.NaN);
    }
}

/// <param name="Advance">From the entry, along the scanning surface, towards the weld positive.</param>
/// <param name="Path">In the part.</param>
/// <param name="Spread">The path that spreads alike in the first leg's medium: Σ sₖ vₖ / v₁.</param>
/// <param name="Time">In the part, s.</param>
internal readonly record struct Arrival(double Advance, double Path, double Spread, double Time);
