using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Run;

public sealed class SetUnknownLimit : RequirementSetRule
{
    public override RuleDescription Description { get; } = new(
        "set-unknown-limit", RuleFamily.Run, Severity.Error,
        "A requirement set states a limit that no rule reads, or states a known one the wrong way round.",
        "Whoever wrote the limit believes that it is judged. It is not.",
        "Correct the name, or the kind of quantity, or at-most against at-least.");

    public override void Check(RequirementSet set, Func<string, RequirementSet?> find, FindingSink sink)
    {
        foreach (var group in set.Limits.GroupBy(limit => limit.Name))
        {
            if (!group.Key.TryGet(out var name)) continue;
            if (LimitNames.ComeLater.Contains(name, StringComparer.Ordinal))
            {
                sink.Report(this, group.Key, $"no rule reads {name} yet: it is not judged").As(Severity.Note).With("limit", name);
                continue;
            }

            if (LimitNames.Find(name) is not { } known)
            {
                sink.Report(this, group.Key, NearestText.Of($"no rule reads a limit named {name}", name, LimitNames.All.Select(limit => limit.Name)))
                    .With("limit", name);
                continue;
            }

            foreach (var limit in group)
            {
                if (limit.Value is { } value && known.Sense == limit.Sense && known.Kinds.Contains(value.Kind)) continue;
                var wanted = known.Sense == LimitSense.AtLeast ? "at-least" : "at-most";
                sink.Report(this, limit.Place, group.Key.Path, $"{name} is read as {wanted} with a {known.Kinds[0].ToString().ToLowerInvariant()}, and this entry is not").With("limit", name);
            }
        }
    }
}
