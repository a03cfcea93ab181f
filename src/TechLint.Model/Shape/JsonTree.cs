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
        if (text.StartsWith("0x", StringComparison.Ordinal))
            return long.TryParse(text.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var hex) ? JsonValue.Create(hex) : null;
        if (text.StartsWith("0o", StringComparison.Ordinal)) return JsonValue.Create(text.Skip(2).Aggregate(0m, (sum, digit) => Math.Min(sum, 1e18m) * 8 + digit - '0'));
        if (text.Length < 28 && decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var exact))
            return JsonValue.Create(exact);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? JsonValue.Create(number) : null;
    }
}
