using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

public sealed class WaiverUnapproved : RunRule
{
    public override RuleDescription Description { get; } = new(
        "waiver-unapproved", RuleFamily.Waivers, Severity.Error,
        "A waiver names nobody who approved it. It hides nothing.",
        "An exception that nobody answers for is no exception.",
        "Have it approved, and name who did.");
}
