using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Model.Documents;

/// <summary>The settings at the root of a workspace.</summary>
public sealed record WorkspaceSettings(
    SyntaxTree? Tree, Bound<DateOnly> AsOf, BoundList<Bound<string>> Requirements, BoundList<Bound<string>> Equipment,
    ImmutableArray<RuleSetting> Rules, ImmutableArray<PathSetting> Paths)
{
    public static readonly WorkspaceSettings None = new(null, default, new(Presence.Missing, [], default, ""), new(Presence.Missing, [], default, ""), [], []);

    public static WorkspaceSettings Bind(SyntaxTree tree, ShapeCheck? check)
    {
        var root = MapReader.Of(tree, check);
        return new(
            tree, root.Date("as-of"), root.Texts("requirements"), root.Texts("equipment"), BindRules(root.Map("rules")),
            [
                .. root.Maps("paths").Items.Select(map => new PathSetting(
                    map.Text("match"), map.Text("check").Or(null) is not "false", map.Text("reason"), BindRules(map.Map("rules")))),
            ]);
    }

    private static ImmutableArray<RuleSetting> BindRules(MapReader rules) =>
    [
        .. rules.Keys.Select(key =>
        {
            var map = rules.Map(key.Key);
            return new RuleSetting(
                new(Presence.Known, key.Key, key.KeySpan, ModelPath.Join(rules.Path, key.Key)),
                map.IsKnown ? map.Text("severity") : rules.Text(key.Key), map.Text("reason"));
        }),
    ];
}

/// <param name="Severity"><c>error</c>, <c>warning</c>, <c>note</c> or <c>off</c>.</param>
public sealed record RuleSetting(Bound<string> Rule, Bound<string> Severity, Bound<string> Reason);

/// <param name="Match">A glob on paths relative to the root.</param>
/// <param name="Check">False leaves the files out.</param>
public sealed record PathSetting(Bound<string> Match, bool Check, Bound<string> Reason, ImmutableArray<RuleSetting> Rules);
