using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// Snell's law <c>sin α / vw = sin θ / v</c>, angles from the local normal, and the critical angle <c>sin αc = v_from / v_to</c>. Valid for plane waves at plane interfaces and,
/// locally, at ones that are curved little within a wavelength; isotropic materials. Source: geometry of equal wave fronts along the interface, as in every
/// textbook; held to least time and to published angles in tests/Validation.
/// </summary>
public static class Refraction
{
    /// <summary>The angle on the far side; null where the wave is totally reflected.</summary>
    public static Angle? Through(Angle incidence, Speed from, Speed to) => Typed(Through(incidence.Radians, from.MetresPerSecond, to.MetresPerSecond));

    /// <summary>The incidence beyond which a wave of the far side no longer exists; null where the far side is the slower one.</summary>
    public static Angle? CriticalAngle(Speed from, Speed to) => Typed(CriticalAngle(from.MetresPerSecond, to.MetresPerSecond));

    /// <summary>In rad; NaN where totally reflected, or where a speed is no speed.</summary>
    internal static double Through(double incidence, double from, double to) =>
        from > 0 && to > 0 ? Math.Asin(to / from * Math.Sin(incidence)) : double.NaN;

    internal static double CriticalAngle(double from, double to) => from > 0 && to > 0 ? Math.Asin(from / to) : double.NaN;

    private static Angle? Typed(double radians) => double.IsNaN(radians) ? null : Angle.FromRadians(radians);
}
