using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tandem;

/// <summary>Aims a ray from an exit point at a place in a leg: closed form when flat, bracketed secant steps when curved. mm and rad.</summary>
internal static class LaunchTo
{
    /// <summary>The place is met within this, mm.</summary>
    private const double Close = 1e-9;

    private const int MostSteps = 60;

    /// <summary>Keeps the steepest ray that still grazes a surface from missing it by rounding, rad.</summary>
    private const double Graze = 1e-9;

    /// <param name="rays">The section.</param>
    /// <param name="ahead">Along the scanning surface, positive the way the beam looks.</param>
    /// <param name="depth">Of the place.</param>
    /// <param name="leg">1 or 2.</param>
    /// <param name="launch">From the local normal; negative behind the exit point.</param>
    /// <param name="path">Over all legs.</param>
    public static bool TryFind(SectionRays rays, double ahead, double depth, int leg, out double launch, out double path)
    {
        if (!rays.IsCurved)
        {
            var down = leg == 1 ? depth : (2 * rays.Thickness) - depth;
            launch = Math.Atan2(ahead, down);
            path = Math.Sqrt((ahead * ahead) + (down * down));
            return true;
        }

        var target = Math.Abs(ahead);
        var radius = rays.ScanRadius;
        var far = rays.Bend > 0 ? Math.Asin((radius - (leg == 1 ? depth : rays.Thickness)) / radius) - Graze : (Math.PI / 2) - Graze;
        launch = path = double.NaN;
        if (!rays.TryReach(far, depth, leg, out var reached, out _) || reached < target) return false;
        var (low, high, below, above) = (0.0, far, -target, reached - target);
        for (var step = 0; step < MostSteps; step++)
        {
            // Regula falsi halves the stale end (Illinois), so the bracket shrinks from both sides.
            launch = low + ((high - low) * -below / (above - below));
            if (!rays.TryReach(launch, depth, leg, out reached, out path)) return false;
            var off = reached - target;
            if (Math.Abs(off) <= Close) break;
            if (off < 0)
            {
                (low, below) = (launch, off);
                above /= 2;
            }
            else
            {
                (high, above) = (launch, off);
                below /= 2;
            }
        }

        if (ahead < 0) launch = -launch;
        return true;
    }
}
