using System.Text;
using TechLint.Model.Documents;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine;

/// <summary>A limit in words: what it asks, when, on whose word, and what judges it.</summary>
internal static class LimitMeaning
{
    /// <summary>In a requirement set, the limit under the pointer: the entry that it rests on, or on the limit's name all of them, and what stands
    /// behind it in the sets that this one starts from.</summary>
    /// <param name="at">The model path of the place.</param>
    public static string Of(Snapshot snapshot, string path, string at, int offset)
    {
        if (at.Split('/') is not ["limits", var name, ..] || snapshot.TreeOf(path) is not { } tree) return "";
        var set = BoundDocument.Of(tree).RequirementSet;
        var text = new StringBuilder();
        var known = LimitNames.Find(name);
        if (known is not null) text.Append(known.Meaning).Append('\n');
        else if (LimitNames.ComeLater.Contains(name, StringComparer.Ordinal)) text.Append("No rule reads it yet: it is stated, not judged.\n");
        var own = set.Limits.Where(entry => entry.Name.Value == name).ToArray();
        foreach (var entry in own.Where(entry => entry.Place.Touches(offset)).DefaultIfEmpty().SelectMany(one => one is null ? own : [one])) Append(text, "this set", entry, set);
        if (set.From.TryGet(out var parent))
        {
            foreach (var other in RequirementSets.Chain(parent, id => TechniqueLinker.FindSet(id, snapshot)))
            {
                foreach (var entry in other.Limits.Where(entry => entry.Name.Value == name)) Append(text, "inherited from " + (other.Id.Or("") ?? ""), entry, other);
            }
        }

        string[] judges = [.. RuleRegistry.All.Select(rule => rule.Description).Where(rule => rule.Limits.Contains(name, StringComparer.Ordinal)).Select(rule => $"`{rule.Name}`")];
        if (judges.Length > 0) text.Append("\nJudged by ").AppendJoin(", ", judges).Append('\n');
        else if (known is not null) text.Append("\nThe computation rests on it; no rule compares with it by itself.\n");
        return text.ToString();
    }

    /// <summary>Such as <c>at most 2 mm (scan sectorial; thickness 10 to 150 mm): ISO 13588:2019, ... (memory)</c>.</summary>
    public static string Line(LimitEntry entry, RequirementSet set)
    {
        var conditions = Conditions(entry.When);
        return $"{(entry.Sense == LimitSense.AtMost ? "at most" : "at least")} {ValueOf(entry)}{(conditions.Length > 0 ? $" ({conditions})" : "")}: {Cited(entry, set)}";
    }

    private static void Append(StringBuilder text, string whose, LimitEntry entry, RequirementSet set)
    {
        text.Append("\n- ").Append(whose).Append(": ").Append(Line(entry, set));
        if (entry.Value is { } value && Conversions.Of(value) is { Length: > 0 } others) text.Append("; ").Append(others);
        if (entry.Why.TryGet(out var why)) text.Append("; ").Append(why);
        text.Append('\n');
    }

    private static string ValueOf(LimitEntry entry) => entry.Value is { } value ? value.Display() : "a value that cannot be read";

    private static string Cited(LimitEntry entry, RequirementSet set)
    {
        var citation = new Citation(set.Id.Or("") ?? "", entry.Source.Or(null) ?? set.StandardText, entry.Basis);
        return $"{citation.Source} ({citation.BasisText})";
    }

    private static string Conditions(LimitCondition when)
    {
        var parts = new List<string>();
        Words("scan", when.Scans);
        Words("method", when.Methods);
        Words("orientation", when.Orientations);
        Words("form", when.Forms);
        Words("material", when.Materials);
        Words("wave", when.Waves);
        if (when.Thickness is { } wall) parts.Add($"thickness {wall}");
        if (when.OutsideDiameter is { } diameter) parts.Add($"outside diameter {diameter}");
        return string.Join("; ", parts);

        void Words(string name, IReadOnlyCollection<string> values)
        {
            if (values.Count > 0) parts.Add($"{name} {string.Join(" or ", values)}");
        }
    }
}
