using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Delays;

/// <summary>
/// What the rays of a law's elements aim at, in the plane of incidence (mm): a focal point after so many bounces, or a direction where there is no focus.
/// </summary>
/// <param name="X">Of the focal point, or of any point of the wave front.</param>
/// <param name="Z">Of it.</param>
/// <param name="Bounces">Mirrors on the way.</param>
/// <param name="Front">The direction of the plane wave; null for a focus.</param>
internal readonly record struct FocalTarget(double X, double Z, int Bounces, (double X, double Z)? Front)
{
    /// <summary>A law's own target.</summary>
    /// <param name="wall">The section.</param>
    /// <param name="law">The law's ray at its entry into the part.</param>
    /// <param name="focus">Path in the part from there; 0 for none.</param>
    /// <param name="target">The target.</param>
    public static bool TryOf(Wall wall, PlaneRay law, double focus, out FocalTarget target)
    {
        target = new FocalTarget(law.X, law.Z, 0, (law.Dx, law.Dz));
        if (!(focus > 0)) return true;
        var (ray, rest) = (law, focus);
        for (var bounces = 0; bounces < MostBounces; bounces++)
        {
            if (!wall.TryMeet(ray, bounces, out var leg, out _) || leg >= rest)
            {
                var end = ray.After(rest);
                target = new FocalTarget(end.X, end.Z, bounces, null);
                return true;
            }

            rest -= leg;
            if (!wall.TryBounce(ref ray, bounces, out _)) return false;
        }

        return false;
    }

    /// <summary>How far a ray passes beside the target (signed, grows or falls with the ray's direction), and the time to it from the ray's entry; false where the ray
    /// cannot take that way.</summary>
    public bool TryMiss(Wall wall, PlaneRay ray, double speed, out double miss, out double time)
    {
        (miss, time) = (double.NaN, double.NaN);
        if (Front is { } front)
        {
            miss = (ray.Dx * front.Z) - (ray.Dz * front.X);
            time = (((X - ray.X) * front.X) + ((Z - ray.Z) * front.Z)) / speed;
            return true;
        }

        var path = 0.0;
        for (var bounce = 0; bounce < Bounces; bounce++)
        {
            if (!wall.TryBounce(ref ray, bounce, out var leg)) return false;
            path += leg;
        }

        miss = ray.Beside(X, Z);
        var last = ((X - ray.X) * ray.Dx) + ((Z - ray.Z) * ray.Dz);
        time = (path + last) / speed;
        return last > 0;
    }

    /// <summary>As many as a law has legs at most.</summary>
    private const int MostBounces = 30;
}
