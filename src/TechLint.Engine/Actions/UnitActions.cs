using System.Collections.Immutable;
using System.Globalization;
using TechLint.Rules.Findings;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine.Actions;

/// <summary>The quantity under the caret in another unit of the trade.</summary>
public static class UnitActions
{
    public static ImmutableArray<Fix> At(Snapshot snapshot, string path, int offset)
    {
        if (snapshot.TreeOf(path) is not { } tree) return [];
        var steps = tree.PathTo(offset);
        if (steps.IsEmpty || steps[^1].Node is not ScalarNode { Style: ScalarStyle.Plain } scalar || QuantityParser.Parse(scalar.Value) is not { } quantity) return [];
        return [.. Others(quantity).Select(Units.Get).Select(unit => Write(quantity, unit)).Distinct(StringComparer.Ordinal)
            .Select(text => new Fix($"Write {text}", Safe: false, [new TextEdit(path, scalar.ContentSpan, text)]))];
    }

    private static IEnumerable<string> Others(Quantity quantity) => quantity.Unit.Symbol switch
    {
        "mm" => ["in"],
        "in" or "cm" or "m" or "ft" or "um" => ["mm"],
        "degC" => ["degF"],
        "degF" => ["degC"],
        "m/s" or "km/s" => ["in/us", "mm/us"],
        "mm/us" => ["m/s", "in/us"],
        "in/us" => ["m/s", "mm/us"],
        "mm/s" => ["in/s"],
        "in/s" => ["mm/s"],
        _ => [],
    };

    /// <summary>
    /// As many digits as keep what the author's digits say: the smallest number whose error, going back, is below half of the last digit
    /// written. A fraction of an inch is exact in millimetres.
    /// </summary>
    private static string Write(Quantity quantity, Unit unit)
    {
        var exact = unit.FromBase(quantity.Exact);
        var half = 0.5m;
        for (var i = 0; i < quantity.Decimals; i++) half /= 10;
        for (var digits = 0; digits <= 10; digits++)
        {
            var rounded = decimal.Round(exact, digits, MidpointRounding.AwayFromZero);
            var back = quantity.Unit.FromBase(unit.ToBase(rounded));
            var isEnough = digits == 10 || rounded == exact || (quantity.Value == decimal.Truncate(quantity.Value * 1000000) / 1000000 && Math.Abs(back - quantity.Value) * 10 <= half);
            if (isEnough) return $"{rounded.ToString("0.##########", CultureInfo.InvariantCulture)} {unit.Symbol}";
        }

        return quantity.Display();
    }
}
