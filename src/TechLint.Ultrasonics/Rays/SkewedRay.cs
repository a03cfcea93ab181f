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

    /// <summary>
    /// Incidence on a fusion face from its normal, 0 to 90 deg: <c>cos i = |d·n|</c>, the face running along x and leaning by <paramref name="face"/> from the vertical, so
    /// that <c>n = (0, cos b, sin b)</c>: <c>cos i = |sin θ cos δ cos b ± cos θ sin b|</c>, + in odd legs (downwards), − in even ones.
    /// </summary>
    /// <param name="angle">In the part, from the normal of the scanning surface (around a pipe: as the section's ray stands to the vertical at the face).</param>
    /// <param name="skew">Of the beam.</param>
    /// <param name="face">Positive where the face's normal that points along the beam's way points down: where the bevel opens to the scanning surface and the beam
    /// meets the face on its far side.</param>
    /// <param name="isUpwards">Even legs.</param>
    public static Angle OnFace(Angle angle, Angle skew, Angle face, bool isUpwards)
    {
        var down = isUpwards ? -Math.Cos(angle.Radians) : Math.Cos(angle.Radians);
        var cosine = (Math.Sin(angle.Radians) * Math.Cos(skew.Radians) * Math.Cos(face.Radians)) + (down * Math.Sin(face.Radians));
        return Angle.FromRadians(Math.Acos(Math.Min(1, Math.Abs(cosine))));
    }

    internal static double InSection(double angle, double skew) => Math.Atan(Math.Tan(angle) * Math.Cos(skew));

    /// <summary>Length in the section for a length of the beam's own.</summary>
    internal static double Shrink(double angle, double skew)
    {
        var along = Math.Sin(angle) * Math.Sin(skew);
        return Math.Sqrt(1 - (along * along));
    }
}
