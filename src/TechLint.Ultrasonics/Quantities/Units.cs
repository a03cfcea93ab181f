using System.Collections.Frozen;
using System.Collections.Immutable;

namespace TechLint.Ultrasonics.Quantities;

/// <summary>
/// Every unit that a technique may use. Base units: mm, deg, m/s, MHz, dB, degC, K, %, us, kg/m3, steps/mm, MB/s.
/// The inch is exactly 25.4 mm, by definition since 1959; a year is 365.25 d and a month a twelfth of it (retention and validity only).
/// </summary>
public static class Units
{
    private const decimal Inch = 25.4m;
    private const decimal SecondInMicroseconds = 1_000_000m;
    private const decimal DayInMicroseconds = 86_400m * SecondInMicroseconds;

    public static readonly ImmutableArray<Unit> All =
    [
        new("mm", QuantityKind.Length, 1m), new("in", QuantityKind.Length, Inch), new("um", QuantityKind.Length, 0.001m),
        new("cm", QuantityKind.Length, 10m), new("m", QuantityKind.Length, 1000m), new("ft", QuantityKind.Length, 12m * Inch),
        new("deg", QuantityKind.Angle, 1m),
        new("m/s", QuantityKind.Speed, 1m), new("mm/us", QuantityKind.Speed, 1000m), new("km/s", QuantityKind.Speed, 1000m),
        new("in/us", QuantityKind.Speed, Inch * 1000m), new("mm/s", QuantityKind.Speed, 0.001m), new("in/s", QuantityKind.Speed, Inch / 1000m),
        new("MHz", QuantityKind.Frequency, 1m), new("kHz", QuantityKind.Frequency, 0.001m), new("Hz", QuantityKind.Frequency, 0.000001m),
        new("dB", QuantityKind.Level, 1m),
        new("degC", QuantityKind.Temperature, 1m), new("degF", QuantityKind.Temperature, 5m / 9m, -160m / 9m),
        new("K", QuantityKind.TemperatureDifference, 1m),
        new("%", QuantityKind.Share, 1m),
        new("us", QuantityKind.Time, 1m), new("ns", QuantityKind.Time, 0.001m), new("ms", QuantityKind.Time, 1000m),
        new("s", QuantityKind.Time, SecondInMicroseconds), new("min", QuantityKind.Time, 60m * SecondInMicroseconds),
        new("h", QuantityKind.Time, 3600m * SecondInMicroseconds), new("d", QuantityKind.Time, DayInMicroseconds),
        new("days", QuantityKind.Time, DayInMicroseconds), new("months", QuantityKind.Time, DayInMicroseconds * 365.25m / 12m),
        new("years", QuantityKind.Time, DayInMicroseconds * 365.25m), new("year", QuantityKind.Time, DayInMicroseconds * 365.25m),
        new("kg/m3", QuantityKind.Density, 1m),
        new("steps/mm", QuantityKind.EncoderResolution, 1m), new("steps/in", QuantityKind.EncoderResolution, 1m / Inch),
        new("MB/s", QuantityKind.DataRate, 1m),
    ];

    private static readonly FrozenDictionary<string, Unit> BySymbol = All.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);

    public static Unit Get(string symbol) => BySymbol[symbol];

    /// <summary>The units of a kind, the one offered first in front.</summary>
    public static IEnumerable<Unit> Of(QuantityKind kind) => All.Where(unit => unit.Kind == kind);
}
