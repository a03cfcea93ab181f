using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.References;

public sealed class SetRedefined : RequirementSetRule
{
    public override RuleDescription Description { get; } = new(
        "set-redefined", RuleFamily.References, Severity.Error,
        "A requirement set of the workspace takes the id of a built-in one.",
        "A reviewer who reads the id believes that the standard's limits were applied. The built-in set is used, and this one is not.",
        "Give the set an id of its own and start it from the built-in one.");

    public override void Check(RequirementSet set, Func<string, RequirementSet?> find, FindingSink sink)
    {
        if (set.IsBuiltIn || !set.Id.TryGet(out var id) || !BuiltInSets.Ids.Contains(id, StringComparer.Ordinal)) return;
        sink.Report(this, set.Id, $"{id} is a built-in requirement set, and this one is not used in its place").With("set", id);
    }
}
