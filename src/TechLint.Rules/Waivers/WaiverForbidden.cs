using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

public sealed class WaiverForbidden : RunRule
{
    public override RuleDescription Description { get; } = new(
        "waiver-forbidden", RuleFamily.Waivers, Severity.Error,
        "A waiver is for a rule that a requirement set marks as never to be waived. It hides nothing.",
        "The standard or the owner allows no exception from this rule.",
        "Mend what the rule finds.");
}
