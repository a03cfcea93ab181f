using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

public sealed class WaiverUnused : RunRule
{
    public override RuleDescription Description { get; } = new(
        "waiver-unused", RuleFamily.Waivers, Severity.Warning,
        "A waiver covers no finding.",
        "What it excused is mended, or it names the wrong place; left standing, it may one day hide something new.",
        "Delete it, or correct its place.");
}
