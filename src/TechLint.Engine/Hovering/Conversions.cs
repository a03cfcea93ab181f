using System.Globalization;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine;

/// <summary>A quantity in the other units that the trade uses for it.</summary>
internal static class Conversions
{
    private static readonly Dictionary<QuantityKind, string[]> Shown = new()
    {
        [QuantityKind.Length] = ["mm", "in"],
        [QuantityKind.Speed] = ["m/s", "mm/us", "in/us"],
        [QuantityKind.Frequency] = ["MHz", "kHz"],
        [QuantityKind.Temperature] = ["degC", "degF"],
        [QuantityKind.EncoderResolution] = ["steps/mm", "steps/in"],
    };

    /// <summary>Scanning speeds read better by the second.</summary>
    private static readonly string[] Slow = ["mm/s", "in/s"];

    public static string Of(Quantity quantity)
    {
        if (!Shown.TryGetValue(quantity.Kind, out var units)) return "";
        if (quantity.Kind == QuantityKind.Speed && quantity.Unit.Symbol is "mm/s" or "in/s") units = Slow;
        return string.Join(", ", units.Where(symbol => symbol != quantity.Unit.Symbol).Select(symbol => Write(quantity, Units.Get(symbol))));
    }

    private static string Write(Quantity quantity, Unit unit)
    {
        var value = unit.FromBase(quantity.Exact);
        var digits = Math.Abs(value) switch { >= 1000 => 0, >= 100 => 1, >= 10 => 2, >= 1 => 3, _ => 4 };
        return $"`{decimal.Round(value, digits).ToString("0.####", CultureInfo.InvariantCulture)} {unit.Symbol}`";
    }
}
