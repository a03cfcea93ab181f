using System.Text;
using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine;

/// <summary>What an editor shows when the pointer rests on something: Markdown, and the characters it speaks of.</summary>
public sealed record HoverText(string Markdown, TextSpan Span);

/// <summary>
/// The meaning of a key from the schema, and of a quantity: other units, and what the number does in this technique.
/// </summary>
public static class Hover
{
    /// <summary>Null where there is nothing to say.</summary>
    public static HoverText? At(Snapshot snapshot, string path, int offset)
    {
        if (snapshot.TreeOf(path) is not { } tree || FormatKinds.Of(path) is not { } kind) return null;
        var steps = tree.PathTo(offset);
        if (steps.IsEmpty || Innermost(steps) is not { } scalar) return null;
        var text = new StringBuilder();
        var key = ShapeWalk.KeyAt(FormatShapes.Of(kind), steps);
        if (key is not null) text.Append("**").Append(key.Title).Append("**\n\n").Append(key.Description).Append('\n');
        var isKey = steps[^1].Entry is { } entry && ReferenceEquals(entry.Key, steps[^1].Node);
        var value = isKey ? steps[^1].Entry!.Value.Resolve() as ScalarNode : scalar;
        if (value is not null && QuantityParser.Parse(value.Value) is { } quantity)
        {
            var others = Conversions.Of(quantity);
            if (others.Length > 0) text.Append("\n`").Append(quantity.Display()).Append("` = ").Append(others).Append('\n');
        }

        var name = Navigating.NameIndex.Of(tree).At(offset);
        if (name is not null && NameMeaning.Of(snapshot, path, name) is { Length: > 0 } meaning) text.Append('\n').Append(meaning);
        if (key is not null && name is null && value is not null) text.Append(WhatMayStand(key));
        var at = ModelPathLocator.At(tree, offset);
        if (kind == FormatKind.Requirement && LimitMeaning.Of(snapshot, path, at, offset) is { Length: > 0 } limit) text.Append('\n').Append(limit);
        var computed = kind switch
        {
            FormatKind.Technique => ComputedMeaning.Of(snapshot, path, at),
            FormatKind.Equipment => EquipmentMeaning.Of(tree, at, offset),
            _ => [],
        };
        foreach (var line in computed.Distinct(StringComparer.Ordinal)) text.Append("\n- ").Append(line);

        return text.Length == 0 ? null : new HoverText(text.ToString().Trim(), scalar.Span);
    }

    /// <summary>The words of an enumeration, and what holds where nothing is said.</summary>
    private static string WhatMayStand(KeyShape key)
    {
        var words = ShapeWalk.Alternatives(key.Value).OfType<EnumShape>().SelectMany(shape => shape.Values).Distinct(StringComparer.Ordinal).ToArray();
        var text = words.Length > 1 ? $"\nOne of {string.Join(", ", words.Select(word => $"`{word}`"))}.\n" : "";
        return key.Default is { Length: > 0 } otherwise ? text + $"\nWhere it is left out: `{otherwise}`.\n" : text;
    }

    private static ScalarNode? Innermost(IReadOnlyList<TreeStep> steps) => steps[^1].Node as ScalarNode;
}
