using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Welds;

/// <summary>
/// Misaligned edges (hi-lo). The error e, in mm, is how much deeper the right edge lies than the left one, counted from the outer surface; up to
/// <c>misalignment-at-most</c> either way. Each side keeps its wall, its probes, its fusion face, its toes and its half of the examined volume, and
/// moves with them as one; both meet in a step at y = 0 (common practice of fit-up: the linear offset of the parts, measured surface to surface).
/// </summary>
/// <remarks>
/// Seen in a half's own frame nothing of that half moves: what changes is the beams that come from the other side. A ray that crosses the step on its way
/// down finds the other half e deeper, on its way up e shallower. Beyond the step it therefore runs as if it had started from a virtual exit point:
/// the ray that meets y = 0 in the same leg, at the same local incidence, at the depth that the other half gives to that place.
/// Flat: <c>y' = y ± e tan θ</c>, path <c>± e / cos θ</c>, the angle the same. Curved: <c>sin θ' = (r ± e) sin i / Rs</c> with the incidence i at
/// the radius r of the step (law of sines). The form is the same in a frame from inside: turning the section over leaves the step as it is.
/// What is left out: rays beside the axis cross the step in the axis's leg, and in legs before it nothing is seen beyond; a diffraction pair keeps its place over each half (its echoes shift by e/2 at most).
/// </remarks>
internal static class Misalignment
{
    private const int MostSteps = 60;

    /// <summary>Crossing a place on the surface is neither way: within this of it, mm, the leg that starts there is taken.</summary>
    private const double Rounding = 1e-9;

    /// <summary>A law as the half beyond the step sees it, in the pass's own frame; itself where it never crosses; null where it ends at the step.</summary>
    /// <param name="line">The law, from its own half.</param>
    /// <param name="rays">The wall.</param>
    /// <param name="error">e, right deeper positive (in either frame).</param>
    public static SightLine? Beyond(SightLine line, SectionRays rays, double error)
    {
        // From the right, the left half lies deeper by −e.
        var deeper = error * line.Direction;
        var way = -line.ExitY * line.Direction;
        if (deeper == 0 || !(way > 0) || !(line.Angle > 0)) return line;
        if (CrossingOf(line, rays, way) is not var (leg, depth, path)) return line;

        var beyond = depth - deeper;
        var angle = line.Angle;
        if (rays.IsCurved)
        {
            var sine = (rays.ScanRadius - (rays.Bend * beyond)) * Math.Sin(line.Angle) / (rays.ScanRadius - (rays.Bend * depth));
            if (!(sine < 1)) return null;
            angle = Math.Asin(sine);
        }

        if (!rays.TryReach(angle, beyond, leg, out var advance, out var pathBeyond)) return null;
        var further = path - pathBeyond;
        return line with
        {
            ExitY = -line.Direction * advance,
            Angle = angle,
            Width = line.Width.CountedFrom(further),
            PathFrom = line.PathFrom - further,
            PathTo = line.PathTo - further,
            LegMask = line.LegMask & ~((1 << (leg - 1)) - 1),
            StepLeg = leg,
            StartY = line.ExitY,
            StartTurn = line.Angle - angle,
        };
    }

    /// <summary>Where the axis meets y = 0: its leg, its depth there and its path.</summary>
    private static (int Leg, double Depth, double Path)? CrossingOf(SightLine line, SectionRays rays, double way)
    {
        for (var leg = 1; leg <= LaunchSegments.GreatestLeg; leg++)
        {
            var end = (leg & 1) == 1 ? rays.Thickness : 0;
            var isMet = rays.TryReach(line.Angle, end, leg, out var advance, out _);
            if (isMet && advance <= way + Rounding) continue;

            // In odd legs the advance grows with the depth, in even ones it falls; a ray that misses the bore has no way where it is not.
            var (near, far) = ((leg & 1) == 1 ? 0 : rays.Thickness, end);
            for (var step = 0; step < MostSteps; step++)
            {
                var middle = (near + far) / 2;
                if (rays.TryReach(line.Angle, middle, leg, out var there, out _) && there <= way) near = middle;
                else far = middle;
            }

            return rays.TryReach(line.Angle, near, leg, out _, out var path) ? (leg, near, path) : null;
        }

        return null;
    }
}
