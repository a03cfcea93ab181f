using System.Globalization;

namespace TechLint.Ultrasonics.Quantities;

/// <summary>
/// Numbers as a reader sees them. A value that misses its limit must be seen to miss it: 99.97 % against 100 % is never
/// shown as 100 %, so digits are added until the two differ.
/// </summary>
public static class Digits
{
    /// <summary>Beyond these a double has nothing more to tell; values that still agree are one number.</summary>
    private const int Most = 15;

    /// <summary>How many digits behind the point, at least <paramref name="digits"/>, keep a value apart from its limit when both are rounded.</summary>
    public static int Needed(double value, double limit, int digits) =>
        Exact(value) is { } left && Exact(limit) is { } right ? Needed(left, right, digits) : digits;

    /// <inheritdoc cref="Needed(double, double, int)"/>
    public static int Needed(decimal value, decimal limit, int digits)
    {
        digits = Math.Clamp(digits, 0, Most);
        if (value == limit) return digits;
        for (var count = digits; count <= Most; count++)
        {
            // A limit is shown as its source writes it, so the rounded value must miss the exact limit too.
            var shown = Rounded(value, count);
            if (shown != limit && shown != Rounded(limit, count)) return count;
        }

        return digits;
    }

    /// <summary>The value to show beside its limit; null where it is no number, or none that can be written out.</summary>
    public static decimal? Apart(double value, double limit, int digits) => Rounded(value, Needed(value, limit, digits));

    /// <inheritdoc cref="Apart(double, double, int)"/>
    public static decimal Apart(decimal value, decimal limit, int digits) => Rounded(value, Needed(value, limit, digits));

    /// <summary>Rounded half away from zero, as a reader with a pencil does; null where it is no number, or none that can be written out.</summary>
    public static decimal? Rounded(double value, int digits) => Exact(value) is { } exact ? Rounded(exact, digits) : null;

    /// <inheritdoc cref="Rounded(double, int)"/>
    public static decimal Rounded(decimal value, int digits) => Math.Round(value, Math.Clamp(digits, 0, Most), MidpointRounding.AwayFromZero);

    /// <summary>Without exponent, without zeros at the end, without a minus before zero.</summary>
    public static string Text(decimal value) =>
        value == 0 ? "0" : value.ToString("0.############################", CultureInfo.InvariantCulture);

    private static decimal? Exact(double value) => Math.Abs(value) < 1e28 ? (decimal)value : null;
}
