using TechLint.Model.Binding;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Materials;

namespace TechLint.Rules.Fit;

public sealed class StandardOutOfScope : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "standard-out-of-scope", RuleFamily.Fit, Severity.Error,
        "A requirement set is named for a part that its standard does not speak of: another thickness, diameter, material or joint.",
        "Limits outside their scope prove nothing: a reviewer will not accept an examination by a standard that excludes the part.",
        "Name the standard that governs the part, or agree on a demonstration with the owner and write it down.");

    public override void Check(TechniqueContext context)
    {
        var technique = context.Technique;
        foreach (var set in context.Requirements.Named)
        {
            if (!set.Id.TryGet(out var id)) continue;
            var named = technique.Requirements.Items.FirstOrDefault(item => item.Value == id);
            var (span, path) = named.IsKnown ? (named.Span, named.Path) : (technique.Requirements.Span, technique.Requirements.Path);
            foreach (var reason in Reasons(technique, set))
            {
                context.Sink.Report(this, span, path, $"{set.StandardText} speaks of {reason}").With("set", id)
                    .Under(new Citation(id, set.StandardText, Basis.Memory));
                break;
            }
        }
    }

    private static IEnumerable<string> Reasons(Technique technique, RequirementSet set)
    {
        var component = technique.Component;
        if (Outside(component.Thickness, set.Scope.Thickness)) yield return $"thickness {set.Scope.Thickness.Value}, not of {component.Thickness.Value}";
        if (Outside(component.OutsideDiameter, set.Scope.OutsideDiameter))
        {
            yield return $"outside diameter {set.Scope.OutsideDiameter.Value}, not of {component.OutsideDiameter.Value}";
        }

        foreach (var material in new[] { component.Material.Left, component.Material.Right })
        {
            // A material of the workspace's own may be one of the standard's by another name.
            if (material.TryGet(out var name) && BuiltInMaterials.Find(name) is not null && Excluded(set.Scope.Materials, name)) yield return $"{List(set.Scope.Materials)}, not of {material.Value}";
        }

        if (technique.Weld.Joint.IsKnown && Excluded(set.Scope.Joints, Words.Spell(technique.Weld.Joint.Value)))
        {
            yield return $"{List(set.Scope.Joints)} welds, not of {Words.Spell(technique.Weld.Joint.Value)} welds";
        }
    }

    private static bool Outside(Bound<QuantityBand> claimed, Bound<QuantityBand> scope) =>
        claimed.IsKnown && scope.IsKnown && !scope.Value.Contains(claimed.Value);

    private static bool Excluded(BoundList<Bound<string>> scope, string? name) =>
        name is not null && scope.Presence == Presence.Known && !scope.Items.Any(item => item.Value == name);

    private static string List(BoundList<Bound<string>> items) => string.Join(" and ", items.Items.Select(item => item.Value));
}
