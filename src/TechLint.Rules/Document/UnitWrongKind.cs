using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class UnitWrongKind : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "unit-wrong-kind", RuleFamily.Document, Severity.Error,
        "A quantity of another kind than belongs there.",
        "A time where a length belongs is a slip that leaves the true value unknown.",
        "Write a quantity of the kind that the finding names.");

    public override string Say(Problem problem) => $"{problem.Argument(0)} is {problem.Argument(2)}, and {problem.Argument(1)} belongs here";
}
