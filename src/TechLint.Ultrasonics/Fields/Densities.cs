using TechLint.Ultrasonics.Materials;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// Densities (g/cm³) and missing speeds for the transmission at the interface, where only ratios count. From memory of handbooks; a material that is not here takes the
/// usual one. How loud one angle is beside another hardly depends on them: a tenth of density moves it by less than 0.2 dB (a test holds it so).
/// </summary>
internal static class Densities
{
    public const double Steel = 7.85;
    public const double Plastic = 1.06;

    /// <summary>Transverse over longitudinal speed where one is not stated: Poisson's ratio 0.29, steels (from memory).</summary>
    public const double MetalSpeedRatio = 0.55;

    /// <summary>The same for wedge plastics: 0.45 to 0.52 among the built-in ones.</summary>
    public const double PlasticSpeedRatio = 0.49;

    public static double OfPart(string material) => material switch
    {
        "austenitic-stainless-steel" => 7.9,
        "martensitic-stainless-steel" => 7.7,
        "aluminium" => 2.7,
        "titanium" => 4.5,
        "nickel" or "copper" or "nickel-copper-alloy" => 8.9,
        "nickel-alloy" or "brass" => 8.5,
        _ => Steel,
    };

    public static double OfWedge(string material) => material switch
    {
        "pmma" => 1.18,
        "polyetherimide" => 1.27,
        _ => Plastic,
    };

    /// <summary>Transverse speed in a wedge, mm/s.</summary>
    public static double TransverseOfWedge(string material, double longitudinal) =>
        BuiltInMaterials.Find(material) is { Transverse: { } known } found
            ? longitudinal * known.MetresPerSecond / found.Longitudinal.MetresPerSecond
            : longitudinal * PlasticSpeedRatio;
}
