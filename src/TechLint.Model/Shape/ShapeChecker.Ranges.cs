using System.Collections.Immutable;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

// What two values say only together: ends of a range, a wall and its diameter.
public sealed partial class ShapeChecker
{
    private void CheckRange(MappingNode mapping, ImmutableArray<Entry> entries)
    {
        if (QuantityAt(entries, "from") is not { } from || QuantityAt(entries, "to") is not { } to) return;
        if (from.Value.Kind != to.Value.Kind || from.Value.Exact <= to.Value.Exact) return;
        var (one, other) = (from.Scalar.ContentSpan, to.Scalar.ContentSpan);
        var both = TextSpan.FromBounds(Math.Min(one.Start, other.Start), Math.Max(one.End, other.End));
        // Ends that aliases bring in stand elsewhere.
        var span = mapping.Span.Contains(both) ? both : mapping.Span;
        broken.TryAdd(mapping, Report("range-reversed", span, [from.Scalar.Value, to.Scalar.Value]));
    }

    /// <summary>A round body has a bore: even its thinnest wall and its largest diameter must leave one.</summary>
    private void CheckBore(ImmutableArray<Entry> entries)
    {
        if (Extreme(entries, "thickness", "from", (one, other) => one < other) is not { } wall) return;
        if (Extreme(entries, "outside-diameter", "to", (one, other) => one > other) is not { } diameter) return;
        if (wall.Value.Exact * 2 < diameter.Value.Exact) return;
        var problem = Report("wrong-value", diameter.Scalar.ContentSpan,
            [diameter.Scalar.Value, $"more than twice the thickness of {wall.Scalar.Value}", ""]);
        broken.TryAdd(diameter.Scalar, problem);
    }

    /// <summary>
    /// The least or greatest length at a key that holds a length, a range or one of them for each side; null where it is open or broken.
    /// </summary>
    private (ScalarNode Scalar, Quantity Value)? Extreme(ImmutableArray<Entry> entries, string key, string end,
        Func<decimal, decimal, bool> isBetter)
    {
        if (QuantityAt(entries, key) is { } single) return single.Value.Kind == QuantityKind.Length ? single : null;
        if (Find(entries, key) is not { } entry || broken.ContainsKey(entry.Value)) return null;
        if (entry.Value.Resolve() is not MappingNode mapping || broken.ContainsKey(mapping)) return null;
        var below = mapping.EffectiveEntries();
        if (QuantityAt(below, end) is { } bound) return bound.Value.Kind == QuantityKind.Length ? bound : null;
        if (Extreme(below, "left", end, isBetter) is not { } left || Extreme(below, "right", end, isBetter) is not { } right) return null;
        return isBetter(left.Value.Exact, right.Value.Exact) ? left : right;
    }

    private (ScalarNode Scalar, Quantity Value)? QuantityAt(ImmutableArray<Entry> entries, string key)
    {
        if (Find(entries, key) is not { } entry || broken.ContainsKey(entry.Value)) return null;
        if (ScalarOf(entry.Value) is not { } scalar || broken.ContainsKey(scalar)) return null;
        return QuantityParser.Parse(scalar.Value) is { } quantity ? (scalar, quantity) : null;
    }
}
