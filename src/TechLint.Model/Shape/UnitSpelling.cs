using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>Turns the spellings that people use for units into the ones that the format knows.</summary>
internal static class UnitSpelling
{
    /// <summary>The quantity with its unit spelled as the format knows it, or null where no unit of the right kind is meant.</summary>
    public static string? Suggest(string text, int unitStart, QuantityShape shape)
    {
        if (unitStart <= 0 || unitStart > text.Length) return null;
        var spelled = text[unitStart..].Trim();
        var symbol = Common(spelled);
        foreach (var bounds in shape.Bounds)
        {
            foreach (var unit in Units.Of(bounds.Kind))
            {
                if (string.Equals(unit.Symbol, symbol, StringComparison.OrdinalIgnoreCase)) return $"{text[..unitStart].TrimEnd()} {unit.Symbol}";
            }
        }

        return null;
    }

    private static string Common(string spelled) => spelled.ToLowerInvariant() switch
    {
        "\"" or "″" or "inch" or "inches" => "in",
        "millimetre" or "millimetres" or "millimeter" or "millimeters" => "mm",
        "µm" or "μm" => "um",
        "µs" or "μs" or "usec" => "us",
        "°" or "º" or "degree" or "degrees" => "deg",
        "°c" or "c" or "deg c" => "degC",
        "°f" or "f" or "deg f" => "degF",
        "percent" or "pct" => "%",
        "kg/m³" or "kg/m^3" => "kg/m3",
        "hours" or "hour" or "hrs" => "h",
        "day" => "d",
        "month" => "months",
        _ => spelled,
    };
}
