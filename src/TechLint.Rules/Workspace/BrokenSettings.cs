using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Workspace;

public sealed class BrokenSettings : Rule
{
    public override RuleDescription Description { get; } = new(
        "broken-settings", RuleFamily.Workspace, Severity.Error,
        "The settings of the workspace name a rule that does not exist.",
        "A setting that has no effect leaves whoever wrote it in the belief that something was raised, lowered or switched off.",
        "Correct the name of the rule.");

    /// <param name="ruleNames">Every rule's name.</param>
    public void Check(WorkspaceSettings settings, IReadOnlyCollection<string> ruleNames, FindingSink sink)
    {
        foreach (var setting in settings.Rules.Concat(settings.Paths.SelectMany(path => path.Rules)))
        {
            var name = setting.Rule.Value!;
            if (!ruleNames.Contains(name, StringComparer.Ordinal) && !RulesToCome.Names.Contains(name))
            {
                var nearest = Model.Shape.NearestName.Of(name, ruleNames);
                sink.Report(this, setting.Rule, nearest is null ? $"no rule is named {name}" : $"no rule is named {name}; the nearest is {nearest}").With("rule", name);
            }
        }
    }
}
