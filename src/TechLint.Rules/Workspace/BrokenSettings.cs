using TechLint.Model.Documents;
using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Workspace;

public sealed class BrokenSettings : Rule
{
    public override RuleDescription Description { get; } = new(
        "broken-settings", RuleFamily.Workspace, Severity.Error,
        "The settings of the workspace name a rule or a requirement set that does not exist.",
        "A setting that has no effect leaves whoever wrote it in the belief that something was raised, lowered, switched off, or held to a standard.",
        "Correct the name.");

    /// <param name="ruleNames">Every rule's name.</param>
    /// <param name="find">Any requirement set by its id, built-in first.</param>
    public void Check(
        WorkspaceSettings settings, IReadOnlyCollection<string> ruleNames, Func<string, RequirementSet?> find, FindingSink sink)
    {
        foreach (var set in settings.Requirements.Items)
        {
            if (!set.TryGet(out var id) || find(id) is not null) continue;
            sink.Report(this, set, NearestText.Of($"no requirement set is named {id}", id, BuiltInSets.Ids)).With("set", id);
        }

        foreach (var setting in settings.Rules.Concat(settings.Paths.SelectMany(path => path.Rules)))
        {
            var name = setting.Rule.Value!;
            if (!ruleNames.Contains(name, StringComparer.Ordinal) && !RulesToCome.Names.Contains(name))
            {
                sink.Report(this, setting.Rule, NearestText.Of($"no rule is named {name}", name, ruleNames)).With("rule", name);
            }
        }
    }
}
