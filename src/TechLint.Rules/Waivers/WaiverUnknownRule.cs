using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

public sealed class WaiverUnknownRule : RunRule
{
    public override RuleDescription Description { get; } = new(
        "waiver-unknown-rule", RuleFamily.Waivers, Severity.Error,
        "A waiver names a rule that does not exist.",
        "The waiver hides nothing, and whoever approved it believes that something is settled.",
        "Correct the name of the rule.");
}
