using System.Collections.Immutable;
using System.Globalization;
using TechLint.Engine.Navigating;
using TechLint.Model.Requirements;
using TechLint.Model.Shape;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine.Completing;

/// <summary>What may be written at a place: keys, values, units, names. From the schema, and from what the workspace holds.</summary>
public static class Completer
{
    private static readonly ImmutableArray<string> Booleans = ["true", "false"];

    /// <summary>Null where nothing can be offered.</summary>
    public static CompletionChoices? At(Snapshot snapshot, string path, int offset)
    {
        if (FormatKinds.Of(path) is not { } kind || snapshot.SourceOf(path) is not { } source) return null;
        if (CompletionPlace.At(source, kind, offset) is not { } place) return null;
        var choices = place.IsKey ? Keys(place) : Values(snapshot, path, place);
        ImmutableArray<CompletionChoice> all = [.. choices.DistinctBy(choice => choice.Label, StringComparer.Ordinal)];
        return all.IsEmpty ? null : new CompletionChoices(place.Replaced, all);
    }

    private static IEnumerable<CompletionChoice> Keys(CompletionPlace place)
    {
        if (place.Shape is MapShape)
        {
            var names = place.KeyPath.StartsWith("requirement/", StringComparison.Ordinal) ? LimitNames.All.Select(limit => (limit.Name, limit.Meaning))
                : RuleRegistry.All.Select(rule => (rule.Name, Meaning: rule.Description.Summary));
            return names.Select(name => new CompletionChoice(name.Name, name.Name + ": ", null, ChoiceKind.Key, "", name.Meaning, false));
        }

        if (place.Shape is not ObjectShape shape) return [];
        var there = place.Owner?.EffectiveEntries() ?? [];
        var demand = ShapeChecker.DemandOf(shape, there);
        var required = ShapeWalk.Required(shape, place.Owner).ToHashSet();
        var full = there.Count(entry => shape.Find(entry.Key.Value) is not null) >= shape.MaximumKeys;
        return from key in shape.Keys
               where !full && !demand.Forbidden.Contains(key.Name, StringComparer.Ordinal) && !there.Any(entry => entry.Key.Value == key.Name)
               let isFirst = required.Contains(key) || demand.OneOf.Any(set => set.Contains(key.Name, StringComparer.Ordinal))
               let detail = key.Title + (required.Contains(key) ? ", required" : "")
               orderby isFirst descending
               select new CompletionChoice(key.Name, key.Name + ": ", KeySnippets.Of(key, place.IsFlow, place.Indent), ChoiceKind.Key, detail, key.Description, isFirst);
    }

    private static IEnumerable<CompletionChoice> Values(Snapshot snapshot, string path, CompletionPlace place)
    {
        if (place.KeyPath is "technique/waivers/at") return snapshot.TreeOf(path) is { } tree ? PlaceChoices.Of(tree, place.Written) : [];
        if (NameTable.At(place.KeyPath) is { IsDefinition: false } name) return Names(snapshot, path, place, name.Kind);
        return ShapeWalk.Alternatives(place.Shape).SelectMany(shape => OfShape(shape, place, snapshot.AsOf));
    }

    private static IEnumerable<CompletionChoice> OfShape(ValueShape shape, CompletionPlace place, DateOnly asOf) => shape switch
    {
        DateShape => Days(place, asOf),
        EnumShape words => words.Values.Select(word => Value(word, place.Key?.Title ?? "") with { Documentation = place.Key?.Description ?? "" }),
        BooleanShape => Booleans.Select(word => Value(word, place.Key?.Title ?? "") with { Documentation = place.Key?.Description ?? "" }),
        QuantityShape quantity => Quantities(quantity, place),
        IntegerShape { Minimum: var least, Maximum: var most } when most - (long)least is >= 0 and < 6 =>
            Enumerable.Range(least, most - least + 1).Select(number => Value(number.ToString(CultureInfo.InvariantCulture), "")),
        _ => (place.Key?.Examples ?? []).Select(example => Value(example, "for example")),
    };

    /// <summary>Units behind the number that is written; before it, examples of the schema.</summary>
    private static IEnumerable<CompletionChoice> Quantities(QuantityShape shape, CompletionPlace place)
    {
        var end = 0;
        while (end < place.Written.Length && (char.IsAsciiDigit(place.Written[end]) || place.Written[end] is '.' or '/' or '-' or '+' or ' ')) end++;
        var number = place.Written[..end].TrimEnd(' ');
        if (!number.Any(char.IsAsciiDigit))
        {
            return (place.Key?.Examples ?? []).Where(example => QuantityParser.Parse(example) is { } known && shape.BoundsOf(known.Kind) is not null)
                .Select(example => Value(example, "for example"));
        }

        return shape.Bounds.SelectMany(bounds => Units.Of(bounds.Kind))
            .Select(unit => new CompletionChoice($"{number} {unit.Symbol}", $"{number} {unit.Symbol}", null, ChoiceKind.Unit, place.Key?.Title ?? "", place.Key?.Description ?? "", false)
            {
                // The unit may be typed right behind the number.
                Filter = place.Written[..end].EndsWith(' ') ? $"{place.Written[..end]}{unit.Symbol}" : $"{number}{unit.Symbol}",
            });
    }

    /// <summary>The day that the workspace is judged by, and a year on where something is to hold until then. The clock is not read.</summary>
    private static IEnumerable<CompletionChoice> Days(CompletionPlace place, DateOnly asOf)
    {
        yield return Value(Day(asOf), "the day of judging");
        if (place.Key?.Name is "until" or "valid-until" && asOf.Year < DateOnly.MaxValue.Year) yield return Value(Day(asOf.AddYears(1)), "a year after the day of judging");

        static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    private static IEnumerable<CompletionChoice> Names(Snapshot snapshot, string path, CompletionPlace place, NameKind kind)
    {
        switch (kind)
        {
            case NameKind.Rule:
                return RuleRegistry.All.Select(rule => new CompletionChoice(
                    rule.Name, rule.Name, null, ChoiceKind.Name, "rule", rule.Description.Summary + "\n\n" + rule.Description.Why, false));
            case NameKind.RequirementSet:
                var ours = snapshot.Files.Where(file => FormatKinds.Of(file) == FormatKind.Requirement).SelectMany(file => Defined(snapshot, file, kind, ""));
                return BuiltInSets.Ids.Select(id => Name(id, BuiltInSets.Find(id)?.Title.Or(null) ?? "built in")).Concat(ours);
            case NameKind.LibraryPath:
                return snapshot.Files.Where(file => FormatKinds.Of(file) == FormatKind.Equipment).Select(file => Name(Relative(path, file), "equipment library"));
            case NameKind.Station or NameKind.Beam or NameKind.Setup or NameKind.Reference:
                return Defined(place.Tree, kind, kind is NameKind.Station or NameKind.Beam ? TextAbove(place, "technique/setups", "id") : "");
        }

        var scope = kind == NameKind.Reflector ? TextAbove(place, "technique/references", "block") : "";
        var libraries = FormatKinds.Of(path) == FormatKind.Technique ? Navigator.LibrariesOf(snapshot, path, place.Tree)
            : snapshot.Files.Where(file => FormatKinds.Of(file) == FormatKind.Equipment).Append(path).Distinct(StringComparer.Ordinal);
        var builtIn = kind == NameKind.Material ? BuiltInMaterials.All.Select(material => Name(material.Name, "built in")) : [];
        return libraries.SelectMany(library => Defined(snapshot, library, kind, scope)).Concat(builtIn);
    }

    private static IEnumerable<CompletionChoice> Defined(Snapshot snapshot, string file, NameKind kind, string scope) => snapshot.TreeOf(file) is { } tree ? Defined(tree, kind, scope) : [];

    private static IEnumerable<CompletionChoice> Defined(SyntaxTree tree, NameKind kind, string scope) => NameIndex.Of(tree).Uses.Where(use => use.Kind == kind && use.IsDefinition && use.Scope == scope && !use.Name.Contains(CompletionPlace.Marker, StringComparison.Ordinal))
            .Select(use => Name(use.Name, Datasheet.Of(tree, use)));

    private static string TextAbove(CompletionPlace place, string keyPath, string key)
    {
        var path = keyPath[..keyPath.IndexOf('/', StringComparison.Ordinal)];
        foreach (var step in place.Steps)
        {
            if (step.Entry is { } entry) path += "/" + entry.Key.Value;
            else if (path == keyPath && step.Node is MappingNode group && group.Find(key)?.Value.Resolve() is ScalarNode text) return text.Value;
        }

        return "";
    }

    /// <summary>A file's path as it is written in another: relative to that one's folder.</summary>
    private static string Relative(string from, string to)
    {
        var (here, there) = (from.Split('/')[..^1], to.Split('/'));
        var same = 0;
        while (same < here.Length && same < there.Length - 1 && here[same] == there[same]) same++;
        return string.Concat(Enumerable.Repeat("../", here.Length - same)) + string.Join('/', there[same..]);
    }

    private static CompletionChoice Value(string text, string detail) => new(text, text, null, ChoiceKind.Value, detail, "", false);

    private static CompletionChoice Name(string text, string detail) => new(text, text, null, ChoiceKind.Name, detail, "", false);
}
