using System.Globalization;

namespace TechLint.Ultrasonics.Quantities;

/// <summary>Why a text is no quantity.</summary>
public enum QuantityFault
{
    None,

    /// <summary>The text does not start with a number.</summary>
    NoNumber,

    /// <summary>A number stands alone.</summary>
    NoUnit,

    /// <summary>What stands behind the number is no unit known here.</summary>
    UnknownUnit,

    /// <summary>A comma stands where a point belongs: 1,5 could mean 1.5 or 15.</summary>
    DecimalComma,

    /// <summary>The number has more digits or a greater size than exact arithmetic holds.</summary>
    OutOfReach,
}

/// <summary>
/// Reads <c>19.05 mm</c>, <c>3/4 in</c>, <c>1 1/2 in</c>, <c>-10 dB</c> exactly. No exponents, no thousands separators,
/// no infinities: none of them belongs in a written technique.
/// </summary>
public static class QuantityParser
{
    /// <param name="text">The text of a scalar.</param>
    /// <param name="quantity">The quantity, when the fault is <see cref="QuantityFault.None"/>.</param>
    /// <param name="unitStart">Where the unit starts in <paramref name="text"/>, or its length where there is none.</param>
    public static QuantityFault TryParse(ReadOnlySpan<char> text, out Quantity quantity, out int unitStart)
    {
        quantity = default;
        var fault = TryReadNumber(text, out var value, out var decimals, out unitStart);
        if (fault != QuantityFault.None) return fault;
        while (unitStart < text.Length && text[unitStart] == ' ') unitStart++;
        var symbol = text[unitStart..].TrimEnd(' ');
        if (symbol.IsEmpty) return QuantityFault.NoUnit;
        if (symbol[0] == ',') return QuantityFault.DecimalComma;
        if (Units.Find(symbol.ToString()) is not { } unit) return QuantityFault.UnknownUnit;
        try
        {
            quantity = new Quantity(value, unit, decimals);
            _ = quantity.Exact;
            return QuantityFault.None;
        }
        catch (OverflowException)
        {
            return QuantityFault.OutOfReach;
        }
    }

    public static Quantity? Parse(string text) => TryParse(text, out var quantity, out _) == QuantityFault.None ? quantity : null;

    private static QuantityFault TryReadNumber(ReadOnlySpan<char> text, out decimal value, out int decimals, out int at)
    {
        value = 0;
        decimals = 0;
        at = 0;
        var negative = false;
        if (text.Length > 0 && text[0] is '-' or '+')
        {
            negative = text[0] == '-';
            at = 1;
        }

        var fault = ReadDecimal(text, ref at, out value, out decimals);
        if (fault != QuantityFault.None) return fault;

        // 3/4 or 1 1/2: a fraction, alone or behind a whole number.
        var mark = at;
        if (decimals == 0)
        {
            var whole = 0m;
            var numerator = value;
            if (mark < text.Length && text[mark] == ' ')
            {
                var next = mark + 1;
                if (next < text.Length && char.IsAsciiDigit(text[next]))
                {
                    fault = ReadDecimal(text, ref next, out numerator, out var digits);
                    if (fault != QuantityFault.None) return fault;
                    if (digits != 0 || next >= text.Length || text[next] != '/') return QuantityFault.UnknownUnit;
                    whole = value;
                    mark = next;
                }
            }

            if (mark < text.Length && text[mark] == '/' && mark + 1 < text.Length && char.IsAsciiDigit(text[mark + 1]))
            {
                mark++;
                fault = ReadDecimal(text, ref mark, out var denominator, out var digits);
                if (fault != QuantityFault.None) return fault;
                if (digits != 0 || denominator == 0) return QuantityFault.NoNumber;
                value = whole + (numerator / denominator);
                at = mark;
            }
        }

        if (negative) value = -value;
        return QuantityFault.None;
    }

    private static QuantityFault ReadDecimal(ReadOnlySpan<char> text, ref int at, out decimal value, out int decimals)
    {
        value = 0;
        decimals = 0;
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        if (at == start) return QuantityFault.NoNumber;
        if (at + 1 < text.Length && text[at] == '.' && char.IsAsciiDigit(text[at + 1]))
        {
            var point = at++;
            while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
            decimals = at - point - 1;
        }

        // Exact arithmetic holds 28 digits; half of them are left to unit factors.
        if (at - start > 15) return QuantityFault.OutOfReach;
        return decimal.TryParse(text[start..at], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)
            ? QuantityFault.None
            : QuantityFault.NoNumber;
    }
}
