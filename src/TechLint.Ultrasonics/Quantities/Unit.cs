namespace TechLint.Ultrasonics.Quantities;

/// <summary>A unit: its symbol, kind, and the exact factor and offset to the kind's base unit (base = value × factor + offset).</summary>
public sealed record Unit(string Symbol, QuantityKind Kind, decimal Factor, decimal Offset = 0m)
{
    public decimal ToBase(decimal value) => (value * Factor) + Offset;

    public decimal FromBase(decimal value) => (value - Offset) / Factor;

    public override string ToString() => Symbol;
}
