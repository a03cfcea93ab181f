using System.Collections.Immutable;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Engine;

/// <summary>What the settings make of rules and files. Whatever they lower or leave out is counted, never unseen.</summary>
internal sealed class SeveritySettings(WorkspaceSettings settings)
{
    private readonly ImmutableArray<(string Pattern, PathSetting Setting)> paths =
        [.. settings.Paths.Where(path => path.Match.IsKnown).Select(path => (path.Match.Value!, path))];

    /// <summary>Left out only with a reason: a setting without one is itself a finding, and hides nothing.</summary>
    public bool LeavesOut(string file) => paths.Any(path => !path.Setting.Check && path.Setting.Reason.IsKnown && Glob.Matches(path.Pattern, file));

    /// <summary>The severity that a finding keeps; null where its rule is off.</summary>
    public Severity? Of(Rule rule, string file)
    {
        var severity = (Severity?)rule.Description.Severity;
        foreach (var setting in settings.Rules.Concat(paths.Where(path => Glob.Matches(path.Pattern, file)).SelectMany(path => path.Setting.Rules)))
        {
            if (setting.Rule.Value != rule.Name || !setting.Severity.TryGet(out var word)) continue;
            var wanted = word switch { "error" => Severity.Error, "warning" => Severity.Warning, "note" => Severity.Note, _ => (Severity?)null };
            var known = wanted is not null || word == "off";
            var lowers = wanted is null || wanted < rule.Description.Severity;
            if (known && (!lowers || setting.Reason.IsKnown)) severity = wanted;
        }

        return severity;
    }
}
