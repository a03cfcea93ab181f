using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Workspace;

public sealed class BrokenSettings : Rule
{
    private static readonly string[] Severities = ["error", "warning", "note", "off"];

    public override RuleDescription Description { get; } = new(
        "broken-settings", RuleFamily.Workspace, Severity.Error,
        "The settings of the workspace name a rule that does not exist, or change one without a reason.",
        "A setting that has no effect, or that weakens a check for no stated reason, hides what a reviewer should see.",
        "Correct the name, and give a reason with every rule that is lowered or switched off.");

    /// <param name="ruleNames">Every rule's name.</param>
    public void Check(WorkspaceSettings settings, IReadOnlyCollection<string> ruleNames, FindingSink sink)
    {
        foreach (var setting in settings.Rules.Concat(settings.Paths.SelectMany(path => path.Rules)))
        {
            var name = setting.Rule.Value!;
            if (!ruleNames.Contains(name, StringComparer.Ordinal))
            {
                var nearest = Model.Shape.NearestName.Of(name, ruleNames);
                sink.Report(this, setting.Rule, nearest is null ? $"no rule is named {name}" : $"no rule is named {name}; the nearest is {nearest}").With("rule", name);
            }
            else if (setting.Severity.TryGet(out var severity) && !Severities.Contains(severity, StringComparer.Ordinal))
            {
                sink.Report(this, setting.Severity, $"{severity} is no severity: error, warning, note or off belongs here").With("rule", name);
            }
            else if (setting.Severity.TryGet(out var lowered) && lowered != "error" && setting.Reason.IsMissing)
            {
                sink.Report(this, setting.Rule, $"{name} is set to {lowered} without a reason").With("rule", name);
            }
        }

        foreach (var path in settings.Paths)
        {
            if (!path.Check && path.Reason.IsMissing) sink.Report(this, path.Match, $"{path.Match.Or("these files")} are left out without a reason");
        }
    }
}
