using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>How far the speeds of sound may stand from those that the laws are worked out for, either way, as a share of them.</summary>
/// <param name="Part">In the part: what the check of velocity and delay lets pass, and the drift with the part's temperature.</param>
/// <param name="Wedge">In the wedge: its drift with temperature.</param>
public sealed record SpeedTolerance(Share Part, Share Wedge)
{
    public static readonly SpeedTolerance None = new(default, default);

    /// <summary>
    /// Fall of the speed in cross-linked polystyrene and acrylic, per K, as a share of it: -1.9 of 2337 m/s and -2.5 of 2730 m/s, 20 to 50 degC
    /// (textbook values, from memory, good to a third); the greater of the two stands for any wedge.
    /// </summary>
    private const double WedgePerKelvin = 2.5 / 2730;

    /// <summary>Fall of the transverse speed in carbon steel, per K, as a share of it: -0.5 of 3255 m/s (textbook value, from memory, as wide as itself).</summary>
    private const double PartPerKelvin = 0.5 / 3255;

    /// <summary>With what a difference of temperature adds (the part's against the block's, the wedge with it).</summary>
    public SpeedTolerance WithDrift(TemperatureDifference difference) => new(
        new Share(Part.Percent + (100 * PartPerKelvin * Math.Abs(difference.Kelvins))),
        new Share(Wedge.Percent + (100 * WedgePerKelvin * Math.Abs(difference.Kelvins))));
}
