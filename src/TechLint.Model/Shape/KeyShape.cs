using System.Collections.Immutable;

namespace TechLint.Model.Shape;

/// <summary>One key of a group, as the schema describes it.</summary>
/// <param name="Name">The key.</param>
/// <param name="Title">Its title, for outlines and for naming it in a sentence.</param>
/// <param name="Description">One or two plain sentences with meaning and unit, for hover and completion.</param>
/// <param name="IsRequired">True where it must stand in every case; conditions may ask for more.</param>
/// <param name="Default">What holds where it is left out, or null.</param>
/// <param name="Examples">Values as an author would write them.</param>
/// <param name="Value">What may stand behind it.</param>
/// <param name="Plausible">What the trade would expect here; judged for the values below the key too.</param>
public sealed record KeyShape(string Name, string Title, string Description, bool IsRequired, string? Default,
    ImmutableArray<string> Examples, ValueShape Value, ImmutableArray<PlausibleBand> Plausible);
