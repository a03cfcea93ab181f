using System.Globalization;
using System.Text.Json.Nodes;
using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>A tree as the JSON that a general YAML reader would make of it (core schema of YAML 1.2).</summary>
internal static class JsonTree
{
    /// <summary>Null for a YAML null, and for what JSON cannot hold: infinities, unreadable text, aliases that lead nowhere.</summary>
    public static JsonNode? Of(Node? node)
    {
        switch (node)
        {
            case ScalarNode scalar: return Of(scalar);
            case AliasNode alias: return Of(alias.Target);
            case SequenceNode sequence:
                var list = new JsonArray();
                foreach (var item in sequence.Items) list.Add(Of(item));
                return list;
            case MappingNode mapping:
                var group = new JsonObject();
                foreach (var entry in mapping.EffectiveEntries()) group[entry.Key.Value] = Of(entry.Value);
                return group;
            default: return null;
        }
    }

    private static JsonValue? Of(ScalarNode scalar) => CoreScalar.KindOf(scalar) switch
    {
        CoreKind.Text => JsonValue.Create(scalar.Value),
        CoreKind.Boolean => JsonValue.Create(scalar.Value[0] is 't' or 'T'),
        CoreKind.Integer or CoreKind.Number => Number(scalar.Value),
        _ => null,
    };

    private static JsonValue? Number(string text)
    {
        const NumberStyles Digits = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (CoreScalar.IsOctal(text)) return JsonValue.Create(Based(text.AsSpan(2), 8));
        if (CoreScalar.IsHexadecimal(text)) return JsonValue.Create(Based(text.AsSpan(2), 16));
        if (text.Length < 28 && decimal.TryParse(text, Digits, CultureInfo.InvariantCulture, out var exact)) return JsonValue.Create(exact);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? JsonValue.Create(number)
            : null;
    }

    private static double Based(ReadOnlySpan<char> digits, int radix)
    {
        var value = 0d;
        foreach (var digit in digits) value = Math.Min(value, 1e18) * radix + Convert.ToInt32(digit.ToString(), 16);
        return value;
    }
}
