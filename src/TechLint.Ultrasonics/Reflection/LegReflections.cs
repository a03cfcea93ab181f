using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Reflection;

/// <summary>What each bounce makes of a law's wave. The incidence is the leg's own: around a pipe that on the bore, which is steeper or flatter than the law's angle.</summary>
internal static class LegReflections
{
    /// <summary>
    /// A leg is called mode-converted where the bounces before it have kept less than a quarter of the energy, half the amplitude: the 6 dB that the trade takes for the edge
    /// of a beam. Common practice; no standard seen states a figure.
    /// </summary>
    public const double LeastKept = 0.25;

    private const string NoMirror = "the leg ends on reinforcement, which is no mirror";
    private const string UnknownSpeed = "a speed of sound is not known";

    public static ImmutableArray<LegStudy> Of(ImmutableArray<LegStudy> legs, Wave wave, SoundSpeeds speeds)
    {
        var told = ImmutableArray.CreateBuilder<LegStudy>(legs.Length);
        var kept = 1.0;
        foreach (var leg in legs)
        {
            var converted = kept < LeastKept;
            var reflected = leg.EndsOnReinforcement || speeds is not { Longitudinal: { } fast, Transverse: { } slow }
                ? null
                : FreeSurface.Of(wave, leg.Incidence, fast, slow);
            var reason = reflected is not null ? null : leg.EndsOnReinforcement ? NoMirror : UnknownSpeed;
            told.Add(leg with { Reflected = reflected, NotReflected = reason, IsModeConverted = converted });
            kept *= reflected?.Kept.Fraction ?? 1;
        }

        return told.MoveToImmutable();
    }
}
