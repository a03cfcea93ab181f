using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Binding;

/// <summary>A band of a quantity with both ends included, exact; a null end is open.</summary>
public readonly record struct QuantityBand(Quantity? From, Quantity? To)
{
    public decimal FromExact => From?.Exact ?? decimal.MinValue;

    public decimal ToExact => To?.Exact ?? decimal.MaxValue;

    public bool IsSingle => From is { } from && To is { } to && from.Exact == to.Exact;

    public bool Contains(decimal exact) => exact >= FromExact && exact <= ToExact;

    public bool Contains(QuantityBand other) => other.FromExact >= FromExact && other.ToExact <= ToExact;

    /// <summary>True when more than an end point is shared, or both are the same single value.</summary>
    public bool Overlaps(QuantityBand other)
    {
        var from = Math.Max(FromExact, other.FromExact);
        var to = Math.Min(ToExact, other.ToExact);
        return from < to || (from == to && (IsSingle || other.IsSingle) && IsSingle == other.IsSingle);
    }

    /// <summary>As an author would write it: <c>18 to 25 mm</c>, <c>22 mm</c>, <c>from 180 mm</c>.</summary>
    public override string ToString() => (From, To) switch
    {
        ({ } from, { } to) when from.Exact == to.Exact => from.Display(),
        ({ } from, { } to) when from.Unit == to.Unit => $"{from.DisplayNumber()} to {to.Display()}",
        ({ } from, { } to) => $"{from.Display()} to {to.Display()}",
        ({ } from, null) => $"from {from.Display()}",
        (null, { } to) => $"up to {to.Display()}",
        _ => "any",
    };
}
