using System.Text;
using TechLint.Engine.Navigating;
using TechLint.Model.Documents;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Materials;

namespace TechLint.Engine;

/// <summary>What a name stands for: the datasheet lines of an item, the words of a rule, what a requirement set asks.</summary>
internal static class NameMeaning
{
    public static string Of(Snapshot snapshot, string path, NameUse use)
    {
        if (use.Kind == NameKind.Rule) return RuleRegistry.Find(use.Name)?.Description is { } rule ? $"**{rule.Name}**: {rule.Summary}\n\n{rule.Why}\n\n{rule.Remedy}\n" : "";
        if (use.Kind == NameKind.RequirementSet && BuiltInSets.Find(use.Name) is { } builtIn) return Set(snapshot, builtIn);
        if (use.IsDefinition) return "";
        foreach (var place in Navigator.Definitions(snapshot, path, use))
        {
            var tree = snapshot.TreeOf(place.File)!;
            if (use.Kind == NameKind.RequirementSet) return Set(snapshot, BoundDocument.Of(tree).RequirementSet);
            var lines = Datasheet.Lines(tree, place.Use);
            if (lines.Length > 0) return $"**{use.Name}** ({place.File})\n{lines}\n";
        }

        return use.Kind == NameKind.Material && BuiltInMaterials.Find(use.Name) is { } material ? Speeds(material) : "";
    }

    /// <summary>Title, standard, edition, and what it limits, with what it inherits.</summary>
    private static string Set(Snapshot snapshot, RequirementSet set)
    {
        var text = new StringBuilder($"**{set.Title.Or(set.Id.Or("") ?? "")}** ({set.StandardText})\n");
        if (set.From.TryGet(out var parent)) text.Append("\nStarts from `").Append(parent).Append("`.\n");
        if (set.NeverWaivable.Length > 0) text.Append("\nNever waived: ").AppendJoin(", ", set.NeverWaivable.Select(rule => $"`{rule}`")).Append(".\n");
        if (set.NotCovered.Length > 0) text.Append("\nNot covered: ").AppendJoin("; ", set.NotCovered).Append(".\n");
        foreach (var one in RequirementSets.Chain(set.Id.Or("") ?? "", id => id == set.Id.Value ? set : TechniqueLinker.FindSet(id, snapshot)))
        {
            foreach (var entry in one.Limits)
            {
                text.Append($"\n- {entry.Name.Value}: {LimitMeaning.Line(entry, one)}");
                if (!ReferenceEquals(one, set)) text.Append(", inherited from ").Append(one.Id.Or("") ?? "");
            }
        }

        return text.Append('\n').ToString();
    }

    private static string Speeds(Material material) => $"**{material.Name}**: longitudinal {MetresPerSecond(material.Longitudinal)}"
        + (material.Transverse is { } transverse ? $", transverse {MetresPerSecond(transverse)}" : "")
        + $" ({material.Source}; {(material.Basis == SourceBasis.Published ? "published" : "memory")})\n";

    private static string MetresPerSecond(Ultrasonics.Quantities.Speed speed) => $"{ComputedMeaning.Number(speed.MillimetresPerSecond / 1000, 0)} m/s";
}
