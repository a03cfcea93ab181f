using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Run;

public sealed class SetContradiction : RequirementSetRule
{
    public override RuleDescription Description { get; } = new(
        "set-contradiction", RuleFamily.Run, Severity.Error,
        "A requirement set starts from one that does not exist, or from itself by a round-about way.",
        "Limits that were meant to be inherited are not there, and a technique passes that should not.",
        "Correct the id under from.");

    public override void Check(RequirementSet set, Func<string, RequirementSet?> find, FindingSink sink)
    {
        if (!set.From.TryGet(out var parent)) return;
        if (find(parent) is null)
        {
            sink.Report(this, set.From, NearestText.Of($"no requirement set is named {parent}, so nothing is inherited", parent, BuiltInSets.Ids))
                .With("set", parent);
            return;
        }

        var chain = RequirementSets.Chain(parent, find);
        if (!chain.Any(ancestor => ancestor.Id.Value == set.Id.Value)) return;
        sink.Report(this, set.From, $"{set.Id.Or("this set")} starts from itself by way of {parent}").With("set", parent);
    }
}
