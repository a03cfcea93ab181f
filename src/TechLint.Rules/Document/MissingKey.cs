using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class MissingKey : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "missing-key", RuleFamily.Document, Severity.Error,
        "A key that the format demands is left out.",
        "Without it the technique is incomplete, and what depends on it cannot be checked.",
        "Add the key.");

    public override string Say(Problem problem) => $"{problem.Argument(1)} needs {problem.Argument(0)}";
}
