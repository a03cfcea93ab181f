using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

public sealed class WaiverExpired : RunRule
{
    public override RuleDescription Description { get; } = new(
        "waiver-expired", RuleFamily.Waivers, Severity.Error,
        "A waiver's last day is past. It hides nothing any more.",
        "An exception was granted for a time, and the time is over.",
        "Mend what was waived, or have the waiver renewed and approved.");
}
