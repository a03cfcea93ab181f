using System.Text;
using TechLint.Engine.Navigating;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;

namespace TechLint.Engine;

/// <summary>What a name stands for: the datasheet lines of an item, the words of a rule, what a requirement set asks.</summary>
internal static class NameMeaning
{
    public static string Of(Snapshot snapshot, string path, NameUse use)
    {
        if (use.Kind == NameKind.Rule) return RuleRegistry.Find(use.Name)?.Description is { } rule ? $"**{rule.Name}**: {rule.Summary}\n\n{rule.Why}\n\n{rule.Remedy}\n" : "";
        if (use.Kind == NameKind.RequirementSet && BuiltInSets.Find(use.Name) is { } builtIn) return Set(builtIn);
        if (use.IsDefinition) return "";
        foreach (var place in Navigator.Definitions(snapshot, path, use))
        {
            var tree = snapshot.TreeOf(place.File)!;
            if (use.Kind == NameKind.RequirementSet) return Set(Model.Documents.BoundDocument.Of(tree).RequirementSet);
            var lines = Datasheet.Lines(tree, place.Use);
            if (lines.Length > 0) return $"**{use.Name}** ({place.File})\n{lines}\n";
        }

        return "";
    }

    private static string Set(RequirementSet set)
    {
        var text = new StringBuilder($"**{set.Title.Or(set.Id.Or("") ?? "")}** ({set.StandardText})\n");
        foreach (var entry in set.Limits)
        {
            var sense = entry.Sense == LimitSense.AtMost ? "at most" : "at least";
            text.Append($"\n- {entry.Name.Value}: {sense} {entry.Value?.Display() ?? "?"} ({new Citation(set.Id.Or("") ?? "", entry.Source.Or(null) ?? set.StandardText, entry.Basis).BasisText})");
        }

        return text.Append('\n').ToString();
    }
}
