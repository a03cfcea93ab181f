using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// Half-angles of the far-field main lobe in the part, in the plane of incidence, from the beam's axis: <c>sin γ = k λ/A</c>, A the effective aperture.
/// One-way means the sound pressure; echo means pulse-echo, whose level falls twice as fast (echo -6 dB is one-way -3 dB). Null where
/// k λ/A exceeds 1: the level is not reached in front of the aperture.
/// </summary>
/// <remarks>
/// k is where the pattern of a strip <c>sin x / x</c> (arrays, rectangles) or of a disc <c>2 J1(x)/x</c> (round elements), <c>x = π A sin γ/λ</c>, has fallen to the
/// level; computed, and found again by a root finder in tests/Validation. Published rounded for discs: 0.51, 0.87 (echo), 0.70, 1.08 (one-way). Continuous waves; valid
/// beyond about two near-field lengths, and for γ small against 90° − θ: near grazing the lobe is wider on the steep side.
/// </remarks>
/// <param name="OneWay6">One-way -6 dB.</param>
/// <param name="OneWay20">One-way -20 dB.</param>
/// <param name="Echo6">Echo -6 dB.</param>
/// <param name="Echo20">Echo -20 dB.</param>
public sealed record Divergence(Angle? OneWay6, Angle? OneWay20, Angle? Echo6, Angle? Echo20)
{
    /// <param name="effectiveAperture">A, in the part.</param>
    /// <param name="wavelength">λ in the part.</param>
    /// <param name="isRound">A round element.</param>
    /// <returns>Null where an input is no positive length.</returns>
    public static Divergence? Of(Length effectiveAperture, Length wavelength, bool isRound)
    {
        var ratio = wavelength.Millimetres / effectiveAperture.Millimetres;
        if (!(ratio > 0) || !double.IsFinite(ratio)) return null;
        return isRound
            ? new Divergence(Half(DiscOneWay6), Half(DiscOneWay20), Half(DiscEcho6), Half(DiscEcho20))
            : new Divergence(Half(StripOneWay6), Half(StripOneWay20), Half(StripEcho6), Half(StripEcho20));

        Angle? Half(double factor) => factor * ratio <= 1 ? Angle.FromRadians(Math.Asin(factor * ratio)) : null;
    }

    internal const double StripOneWay6 = 0.6033545644;
    internal const double StripOneWay20 = 0.9079286238;
    internal const double StripEcho6 = 0.4429464707;
    internal const double StripEcho20 = 0.7380264346;
    internal const double DiscOneWay6 = 0.7050848445;
    internal const double DiscOneWay20 = 1.0885367345;
    internal const double DiscEcho6 = 0.5144969850;
    internal const double DiscEcho20 = 0.8694248959;
}
