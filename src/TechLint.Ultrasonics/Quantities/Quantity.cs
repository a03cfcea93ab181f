using System.Globalization;

namespace TechLint.Ultrasonics.Quantities;

/// <summary>What a number measures. Speeds of sound and of scanning are one kind.</summary>
public enum QuantityKind
{
    Length, Angle, Speed, Frequency, Level, Temperature, TemperatureDifference, Share, Time, Density, EncoderResolution, DataRate,
}

/// <summary>A number with its unit as an author wrote it, exact to the digit.</summary>
/// <param name="Value">The number in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Decimals">Digits the author wrote behind the point; fractions have none.</param>
public readonly record struct Quantity(decimal Value, Unit Unit, int Decimals)
{
    public QuantityKind Kind => Unit.Kind;

    /// <summary>The number in the kind's base unit (<see cref="Units"/>), rounded nowhere.</summary>
    public decimal Exact => Unit.ToBase(Value);

    /// <summary>The one rounding on the way from text to physics.</summary>
    public double InBase => (double)Exact;

    /// <summary>The number with the digits that its author wrote.</summary>
    public string DisplayNumber() => Decimals > 0
        ? Value.ToString("F" + Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        : decimal.Round(Value, 6).ToString("0.######", CultureInfo.InvariantCulture);

    public string Display() => $"{DisplayNumber()} {Unit.Symbol}";
}
