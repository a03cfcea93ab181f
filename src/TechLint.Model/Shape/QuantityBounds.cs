using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>One kind of quantity that may stand at a place, with the bounds of what has a meaning there, in the kind's base unit.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Least">The lower bound, or null.</param>
/// <param name="LeastIncluded">Whether the lower bound itself may stand.</param>
/// <param name="Most">The upper bound, or null.</param>
/// <param name="MostIncluded">Whether the upper bound itself may stand.</param>
public sealed record QuantityBounds(QuantityKind Kind, decimal? Least = null, bool LeastIncluded = true, decimal? Most = null, bool MostIncluded = true)
{
    public bool Hold(decimal value)
    {
        if (Least is { } least && (LeastIncluded ? value < least : value <= least)) return false;
        return Most is not { } most || (MostIncluded ? value <= most : value < most);
    }
}
