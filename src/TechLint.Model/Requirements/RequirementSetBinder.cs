using System.Collections.Frozen;
using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Requirements;

/// <summary>Turns a requirement set's tree into its typed form. Says nothing: problems come from the shape checker.</summary>
public static class RequirementSetBinder
{
    private static readonly FrozenDictionary<string, Basis> Bases = new Dictionary<string, Basis>(StringComparer.Ordinal)
    {
        ["published"] = Basis.Published, ["memory"] = Basis.Memory, ["common-practice"] = Basis.CommonPractice, ["owner"] = Basis.Owner,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static RequirementSet Bind(SyntaxTree tree, ShapeCheck? check, bool isBuiltIn)
    {
        var root = MapReader.Of(tree, check);
        var scope = root.Map("scope");
        return new RequirementSet(
            tree, isBuiltIn, root.Text("requirement-set"), root.Text("title"), root.Text("standard"), root.Text("edition"), root.Text("from"),
            root.Text("why"),
            new SetScope(
                scope, scope.Band("thickness"), scope.Band("outside-diameter"), scope.Texts("materials"), scope.Texts("joints"), scope.Texts("scans")),
            Plain(root.Texts("never-waivable")), Plain(root.Texts("not-covered")), BindLimits(root.Map("limits")));
    }

    private static ImmutableArray<LimitEntry> BindLimits(MapReader limits)
    {
        var entries = ImmutableArray.CreateBuilder<LimitEntry>();
        foreach (var (name, span) in limits.Keys)
        {
            var bound = new Bound<string>(Presence.Known, name, span, ModelPath.Join(limits.Path, name));
            foreach (var map in limits.Maps(name).Items) entries.Add(BindLimit(bound, map));
        }

        return entries.ToImmutable();
    }

    private static LimitEntry BindLimit(Bound<string> name, MapReader map)
    {
        var atMost = map.Quantity("at-most");
        var atLeast = map.Quantity("at-least");
        var when = map.Map("when");
        return new LimitEntry(
            name,
            new LimitCondition(
                Plain(when.Texts("scan")), Plain(when.Texts("method")), Plain(when.Texts("orientation")), Plain(when.Texts("form")),
                Plain(when.Texts("material")), Plain(when.Texts("wave")), Band(when, "thickness"), Band(when, "outside-diameter")),
            atLeast.IsKnown ? LimitSense.AtLeast : LimitSense.AtMost,
            atLeast.IsKnown ? atLeast.Value : atMost.IsKnown ? atMost.Value : null,
            map.Text("source"), map.Word("basis", Bases).Or(Basis.Memory), map.Text("why"), map.Span);
    }

    private static QuantityBand? Band(MapReader map, string key) => map.Band(key) is { IsKnown: true, Value: var band } ? band : null;

    private static ImmutableArray<string> Plain(BoundList<Bound<string>> texts) => [.. texts.Items.Where(text => text.IsKnown).Select(text => text.Value!)];
}
