using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Rays;

/// <summary>
/// A beam turned by δ from the section across the weld. Its direction in the part is <c>d = (sin θ sin δ, sin θ cos δ, cos θ)</c> along x (the weld), y (across it, the
/// way the beam points) and z (down).
/// </summary>
/// <remarks>
/// Seen in the section it runs at <c>tan θ' = tan θ cos δ</c>, and lengths along it shrink by <c>sqrt(1 − (sin θ sin δ)²)</c>. That holds in a plate and,
/// exactly, around a pipe whose axis is x: the walls' normals have no part along x, so every bounce keeps the beam's part along the axis and mirrors the rest as in the
/// section; the beam is a polygon on a helix and its projection the section's own ray (held to traced vectors in tests/Validation). What is not exact on a
/// curve is the way through the wedge: the law is aimed as in the section, which is true for δ = 0 and an approximation of order δ² a/R else (a sole's length, R the
/// surface's radius). Valid for |δ| below 90 deg. Source: vector geometry.
/// </remarks>
public static class SkewedRay
{
    /// <summary>The angle in the section across the weld, <c>tan θ' = tan θ cos δ</c>.</summary>
    public static Angle InSection(Angle angle, Angle skew) => Angle.FromRadians(InSection(angle.Radians, skew.Radians));

    internal static double InSection(double angle, double skew) => Math.Atan(Math.Tan(angle) * Math.Cos(skew));

    /// <summary>Length in the section for a length of the beam's own.</summary>
    internal static double Shrink(double angle, double skew)
    {
        var along = Math.Sin(angle) * Math.Sin(skew);
        return Math.Sqrt(1 - (along * along));
    }
}
