namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// The simple width model of a beam in its plane of incidence: pulse-echo -6 dB (one-way -3 dB), full width in mm at a sound path in mm
/// from the exit point. The wedge path counts in front of it as its equivalent in the part.
/// </summary>
/// <remarks>
/// Unfocused: the far field of a strip has the echo half-angle <c>sin γ = 0.4429 λ/A</c> (sinc² theory; the constant is checked in
/// tests/Validation), so <c>w = 0.886 λ s/A</c> from the near-field length <c>N = A²/4λ</c> on; up to there the width falls
/// linearly from A to its value at N (0.2215 A). Focused at F: the paraxial (Fresnel) field at s is the unfocused one at
/// <c>1/s' = |1/s − 1/F|</c>, drawn to the scale s/s'. A focus beyond N is no focus: the width is then the unfocused one.
/// Held to a simulated field (tests/Validation, BeamWidthTests) it is narrow, never wide: within 5 % at a focus, unfocused by 25 % at
/// 1.2 N and 5 % at 2 N.
/// </remarks>
internal readonly struct BeamWidth
{
    /// <summary>sinc²(x) = 1/2 in the echo: 2 × 0.4429.</summary>
    public const double FullEchoWidthFactor = 0.8859;

    private readonly double aperture;
    private readonly double divergence;
    private readonly double nearField;
    private readonly double lead;
    private readonly double inverseFocus;

    /// <param name="effectiveAperture">A, in the plane of incidence, in the part.</param>
    /// <param name="wavelength">λ in the part.</param>
    /// <param name="lead">The wedge path's equivalent in the part: path × (vw/v) cos²θ / cos²α.</param>
    /// <param name="focus">Sound path in the part from the exit point to the focus; 0 for none.</param>
    public BeamWidth(double effectiveAperture, double wavelength, double lead, double focus = 0)
    {
        aperture = effectiveAperture;
        divergence = FullEchoWidthFactor * wavelength / effectiveAperture;
        nearField = effectiveAperture * effectiveAperture / (4 * wavelength);
        this.lead = lead;
        var distance = focus + lead;
        inverseFocus = focus > 0 && distance < nearField ? 1 / distance : 0;
    }

    private BeamWidth(in BeamWidth beam, double further)
    {
        (aperture, divergence, nearField, inverseFocus) = (beam.aperture, beam.divergence, beam.nearField, beam.inverseFocus);
        lead = beam.lead + further;
    }

    /// <summary>The same beam with its paths counted from a place farther along it (mm), or before it where negative.</summary>
    public BeamWidth CountedFrom(double further) => new(in this, further);

    public bool IsFocused => inverseFocus > 0;

    /// <summary>
    /// The sound paths at which the width bends: in between it is straight (proved by the formulas above, held by a test), which
    /// lets coverage be solved in closed form. The second is infinite where there is only one.
    /// </summary>
    internal (double First, double Second) Bends => inverseFocus == 0
        ? (nearField - lead, double.PositiveInfinity)
        : ((1 / (inverseFocus + (1 / nearField))) - lead, (1 / (inverseFocus - (1 / nearField))) - lead);

    /// <summary>Full width at a sound path from the exit point.</summary>
    public double At(double path)
    {
        var distance = path + lead;
        if (inverseFocus == 0) return Unfocused(distance);
        var inverse = Math.Abs((1 / distance) - inverseFocus);
        return inverse * nearField <= 1 ? divergence * distance : distance * inverse * Unfocused(1 / inverse);
    }

    private double Unfocused(double distance) => distance >= nearField
        ? divergence * distance
        : aperture + (((divergence * nearField) - aperture) * distance / nearField);
}
