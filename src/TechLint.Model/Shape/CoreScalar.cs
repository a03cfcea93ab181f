using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>What a scalar is to a reader that follows the core schema of YAML 1.2 (section 10.3): an editor's plug-in, for one.</summary>
internal enum CoreKind { Text, Null, Boolean, Integer, Number, NotFinite }

internal static class CoreScalar
{
    public static CoreKind KindOf(ScalarNode scalar)
    {
        if (scalar.Style != ScalarStyle.Plain || scalar.Tag is "!" or "!!str" or "tag:yaml.org,2002:str") return CoreKind.Text;
        var text = scalar.Value;
        switch (text)
        {
            case "" or "~" or "null" or "Null" or "NULL": return CoreKind.Null;
            case "true" or "True" or "TRUE" or "false" or "False" or "FALSE": return CoreKind.Boolean;
            case ".nan" or ".NaN" or ".NAN": return CoreKind.NotFinite;
        }

        var sign = text[0] is '-' or '+' ? 1 : 0;
        if (text.AsSpan(sign) is ".inf" or ".Inf" or ".INF") return CoreKind.NotFinite;
        if (text.StartsWith("0o", StringComparison.Ordinal) && text.Length > 2 && text.AsSpan(2).IndexOfAnyExceptInRange('0', '7') < 0) return CoreKind.Integer;
        if (text.StartsWith("0x", StringComparison.Ordinal) && text.Length > 2 && text.Skip(2).All(char.IsAsciiHexDigit)) return CoreKind.Integer;
        return Decimal(text.AsSpan(sign));
    }

    private static CoreKind Decimal(ReadOnlySpan<char> text)
    {
        var at = Digits(text, 0);
        if (at == text.Length) return at > 0 ? CoreKind.Integer : CoreKind.Text;
        var digits = at;
        if (text[at] == '.')
        {
            var end = Digits(text, at + 1);
            digits += end - at - 1;
            at = end;
        }

        if (digits == 0) return CoreKind.Text;
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            var exponent = at + 1 < text.Length && text[at + 1] is '-' or '+' ? at + 2 : at + 1;
            at = Digits(text, exponent);
            if (at == exponent) return CoreKind.Text;
        }

        return at == text.Length ? CoreKind.Number : CoreKind.Text;
    }

    private static int Digits(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return at;
    }
}
