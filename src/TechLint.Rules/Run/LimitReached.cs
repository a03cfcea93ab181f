using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Run;

public sealed class LimitReached : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "limit-reached", RuleFamily.Run, Severity.Error,
        "A ceiling was reached: of size, depth, aliases, points or findings. What lies beyond it was not checked.",
        "A file of that size is a mistake or an attack. A check that went on for ever would be no check.",
        "Make the file smaller: split it, or take out what does not belong there.");

    public override string Say(Problem problem) => problem.Argument(1).Length > 0
        ? $"the ceiling of {problem.Argument(0)} is reached ({problem.Argument(1)}): what lies beyond was not checked"
        : $"the ceiling of {problem.Argument(0)} is reached: what lies beyond was not checked";
}
