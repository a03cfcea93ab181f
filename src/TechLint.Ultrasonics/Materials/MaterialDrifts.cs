using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Materials;

/// <summary>How the speeds of a material change with temperature, and how far the figure is to be trusted.</summary>
/// <param name="Material">As a technique writes it.</param>
/// <param name="Longitudinal">Of the longitudinal wave.</param>
/// <param name="Transverse">Of the transverse wave; null where no value is known.</param>
/// <param name="Uncertainty">Either way.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Basis">What it rests on.</param>
public sealed record MaterialDrift(
    string Material, SpeedDrift Longitudinal, SpeedDrift? Transverse, SpeedDrift Uncertainty, string Source, SourceBasis Basis)
{
    /// <summary>Of one wave; null where no value is known.</summary>
    public SpeedDrift? Of(Wave wave) => wave == Wave.Longitudinal ? Longitudinal : Transverse;
}

/// <summary>
/// Drifts of speed with temperature, taken as straight lines: from about 0 to 60 degC, well below the softening of the plastics. All from memory and to be confirmed: the
/// literature scatters by the uncertainty stated. What was seen in print is the direction alone: a warmer wedge is slower, and its angle in the part grows.
/// </summary>
public static class MaterialDrifts
{
    private const string Plastics = "literature on wedge plastics, 20 to 50 degC";
    private const string Metals = "literature on carbon steel, 20 to 50 degC; a rule of the trade, 1 % per 55 K, gives -1.1 m/s per K for longitudinal waves";

    public static ImmutableArray<MaterialDrift> All { get; } =
    [
        new("cross-linked-polystyrene", new(-1.9), null, new(0.7), Plastics, SourceBasis.Memory),
        new("pmma", new(-2.5), null, new(0.6), Plastics, SourceBasis.Memory),
        new("polyetherimide", new(-1.5), null, new(0.7), Plastics, SourceBasis.Memory),
        new("carbon-steel", new(-0.6), new(-0.5), new(0.5), Metals, SourceBasis.Memory),
        new("low-alloy-steel", new(-0.6), new(-0.5), new(0.5), Metals, SourceBasis.Memory),
    ];

    /// <summary>Null where none is known for that name.</summary>
    public static MaterialDrift? Find(string name)
    {
        foreach (var drift in All)
        {
            if (string.Equals(drift.Material, name, StringComparison.Ordinal)) return drift;
        }

        return null;
    }
}
