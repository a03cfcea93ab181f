using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Run;

public sealed class InternalError : RunRule
{
    public override RuleDescription Description { get; } = new(
        "internal-error", RuleFamily.Run, Severity.Error,
        "A rule of this program failed. The other rules went on.",
        "What that rule would have found is not known.",
        "Report it with the file that causes it; until it is mended, have a Level III judge this point by hand.");
}
