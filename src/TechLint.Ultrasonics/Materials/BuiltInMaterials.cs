using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Materials;

/// <summary>The materials that need no library entry. Real metals scatter by about 2 %, austenitic ones by more.</summary>
public static class BuiltInMaterials
{
    /// <summary>Fills the gap under a sole that does not fit: gels are mostly water.</summary>
    public static readonly Material Water = new(
        "water", MaterialKind.Couplant, new Speed(1482.38), null, "Marczak, JASA 102 (1997) 2776, at 20 degC", SourceBasis.Published);

    public static ImmutableArray<Material> All { get; } =
    [
        Metal("carbon-steel", 5920, 3255, IsoReference),
        Metal("low-alloy-steel", 5920, 3255, IsoReference),
        Metal("austenitic-stainless-steel", 5790, 3100, "ASTM E494 Appendix X3, Table X3.1 (grade 347); grades spread by 5 %"),
        Metal("martensitic-stainless-steel", 5900, 3300, "ASTM E494 Appendix X3, Table X3.1 (grade 410)"),
        Metal("aluminium", 6300, 3130, Table),
        Metal("titanium", 6240, 3215, Table),
        Metal("nickel", 5630, 2960, Table),
        Metal("nickel-alloy", 5720, 3020, "ASTM E494 Appendix X3, Table X3.1 (nickel-chromium alloy, generic)"),
        Metal("nickel-copper-alloy", 6020, 2720, "ASTM E494 Appendix X3, Table X3.1 (nickel-copper alloy)"),
        Metal("copper", 4700, 2260, Table),
        Metal("brass", 4370, 2100, Table),
        Plastic("cross-linked-polystyrene", 2337, 1155, "handbooks; literature 2330 to 2362 m/s"),
        Plastic("pmma", 2730, 1430, "handbooks; literature 2660 to 2760 m/s, and ASTM E494 Table X3.1 has 2670 m/s"),
        Plastic("polyetherimide", 2440, 1100, "handbooks; literature 2410 to 2460 m/s"),
        Water,
    ];

    /// <summary>
    /// Metals whose welds solidify in coarse columns, which bend and scatter beams in the weld metal: austenitic steels and nickel and its alloys (scope of
    /// ISO 22825:2012). Straight rays do not hold there.
    /// </summary>
    public static bool BendsBeamsInWelds(string name) =>
        name is "austenitic-stainless-steel" or "nickel" or "nickel-alloy" or "nickel-copper-alloy";

    private const string IsoReference = "ISO 10863:2020, ISO 20601:2018, clause 1 (5920 +/- 50 and 3255 +/- 30 m/s)";
    private const string Table = "ASTM E494 Appendix X3, Table X3.1";

    /// <summary>Null where no built-in material has that name.</summary>
    public static Material? Find(string name)
    {
        foreach (var material in All)
        {
            if (string.Equals(material.Name, name, StringComparison.Ordinal)) return material;
        }

        return null;
    }

    private static Material Metal(string name, double longitudinal, double transverse, string source) =>
        new(name, MaterialKind.ParentMetal, new Speed(longitudinal), new Speed(transverse), source, SourceBasis.Published);

    private static Material Plastic(string name, double longitudinal, double transverse, string source) =>
        new(name, MaterialKind.Wedge, new Speed(longitudinal), new Speed(transverse), source, SourceBasis.Memory);
}
