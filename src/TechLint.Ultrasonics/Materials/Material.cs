using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Materials;

/// <summary>What a material serves for.</summary>
public enum MaterialKind { ParentMetal, Wedge, Couplant }

/// <summary>What a value rests on.</summary>
public enum SourceBasis
{
    /// <summary>Seen in the source named.</summary>
    Published,

    /// <summary>Believed, to be confirmed.</summary>
    Memory,
}

/// <summary>A material with its speeds of sound and where they come from.</summary>
/// <param name="Name">As a technique writes it.</param>
/// <param name="Kind">What it serves for.</param>
/// <param name="Longitudinal">Longitudinal speed of sound at room temperature.</param>
/// <param name="Transverse">Transverse speed of sound; null for a liquid.</param>
/// <param name="Source">Where the speeds come from.</param>
/// <param name="Basis">What they rest on.</param>
public sealed record Material(
    string Name, MaterialKind Kind, Speed Longitudinal, Speed? Transverse, string Source, SourceBasis Basis);
