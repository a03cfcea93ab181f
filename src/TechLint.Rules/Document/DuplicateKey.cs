using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class DuplicateKey : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "duplicate-key", RuleFamily.Document, Severity.Error,
        "A key stands twice in one group.",
        "Readers take one of the two values, programs the other.",
        "Delete the one that is not meant.");

    public override string Say(Problem problem) => $"the key {problem.Argument(0)} stands twice; the first one is read";
}
