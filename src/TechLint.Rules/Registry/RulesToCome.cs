using System.Collections.Frozen;

namespace TechLint.Rules.Registry;

/// <summary>
/// Names that the catalogue keeps for rules that do not exist yet. Settings and waivers may name them: that is no slip of the pen, it has no effect.
/// A name leaves this list when its rule enters <see cref="RuleRegistry"/>; a test holds the two apart.
/// </summary>
public static class RulesToCome
{
    public static readonly FrozenSet<string> Names = new[]
    {
        "revision-missing", "approval-missing", "approval-before-preparation", "self-approval", "qualification-missing",
        "qualification-level", "qualification-expired", "withdrawn-in-use", "standard-edition-superseded", "procedure-item-missing",
        "qualification-method", "demonstration-missing", "access-reason-missing", "equipment-expired", "probes-collide",
        "scan-width-exceeded", "contour-mismatch", "contact-gap", "pass-overlap", "weld-section-inconsistent", "angle-outside-wedge",
        "elements-over-instrument", "grating-lobe", "focus-beyond-near-field", "angle-step-too-coarse", "aperture-step-too-coarse",
        "bore-not-reached", "frequency-against-thickness", "wave-mode-mixed", "skew-against-frame", "temperature-shift",
        "leg-wrong-for-wave", "tandem-spacing", "channels-over-instrument", "one-side-only", "fusion-face-incidence",
        "leg-through-reinforcement", "near-surface-unseen", "beam-gap", "haz-not-covered", "tofd-separation", "tofd-dead-zone",
        "tofd-depth-unseen", "tofd-zones-too-few", "tofd-setup-against-thickness", "imaging-region", "imaging-grid-too-coarse",
        "imaging-aperture-too-small", "lamination-scan-missing", "transverse-not-examined", "speed-too-fast", "pulse-rate-too-high",
        "increment-too-coarse", "encoder-too-coarse", "encoder-check-missing", "start-not-marked", "overlap-too-short",
        "time-base-too-short", "digitising-too-slow", "data-rate-too-high", "missing-line-limit", "coupling-not-monitored",
        "coupling-limit-missing", "beams-over-instrument", "reflector-size", "block-thickness", "block-curvature", "block-material",
        "block-temperature", "correction-missing", "check-missing", "check-interval", "check-tolerance", "transfer-not-measured",
        "surface-too-rough", "temperature-range", "scanning-gain-missing", "couplant-missing", "coating-not-accounted",
        "reference-through-other-probe", "recording-level-missing", "acceptance-missing", "acceptance-does-not-match", "sizing-missing",
        "records-missing", "waiting-time-missing", "set-band-gap", "set-source-missing", "set-loosened", "technique-id-duplicate",
        "revision-conflict", "collection-gap", "collection-overlap",
    }.ToFrozenSet(StringComparer.Ordinal);
}
