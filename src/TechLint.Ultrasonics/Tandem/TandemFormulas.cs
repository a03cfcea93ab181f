using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tandem;

/// <summary>
/// A tandem pair on a flat or curved wall: the rear beam meets a face square to the scanning surface after one bounce at the opposite surface, and
/// is mirrored there into the front probe (or the other way round: the way is the same). Geometry; equal angles θ from the local normal, one wave.
/// </summary>
public static class TandemFormulas
{
    /// <summary>Distance between the exit points that serves a depth on a flat wall: <c>2 (t − d) tan θ</c>; 0 ≤ d ≤ t, 0 &lt; θ &lt; 90 deg.</summary>
    public static Length SpacingFor(Length thickness, Length depth, Angle angle) =>
        new(2 * (thickness.Millimetres - depth.Millimetres) * Math.Tan(angle.Radians));

    /// <summary>The depth that a spacing serves on a flat wall: <c>t − s / (2 tan θ)</c>; negative where the axes cross above the surface.</summary>
    public static Length CrossingDepth(Length thickness, Length spacing, Angle angle) =>
        new(thickness.Millimetres - (spacing.Millimetres / (2 * Math.Tan(angle.Radians))));

    /// <summary>Where the front probe's exit point stands before the face on a flat wall: <c>d tan θ</c>.</summary>
    public static Length FrontToFace(Length depth, Angle angle) => new(depth.Millimetres * Math.Tan(angle.Radians));

    /// <summary>
    /// As <c>SpacingFor</c>, on a wall curved across the weld, along the scanning surface, the face standing along the pipe's radius: a ray keeps its
    /// distance <c>Rs sin θ</c> from the axis over bounce and mirror, so the spacing is the advance of leg 2 less that of leg 1 at the depth.
    /// </summary>
    /// <returns>NaN where a ray at this angle misses the depth or the bore, or where the wall leaves no bore.</returns>
    public static Length SpacingOnCurve(Length thickness, Length outsideDiameter, bool fromInside, Length depth, Angle angle)
    {
        var (wall, diameter) = (thickness.Millimetres, outsideDiameter.Millimetres);
        if (!(wall > 0 && diameter > 2 * wall)) return new Length(double.NaN);
        var rays = fromInside ? SectionRays.FromInside(wall, diameter) : SectionRays.FromOutside(wall, diameter);
        return new Length(SpacingFor(rays, depth.Millimetres, angle.Radians));
    }

    internal static double SpacingFor(SectionRays rays, double depth, double angle) =>
        rays.TryReach(angle, depth, 2, out var rear, out _) && rays.TryReach(angle, depth, 1, out var front, out _) ? rear - front : double.NaN;
}
