using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class DuplicateId : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "duplicate-id", RuleFamily.Document, Severity.Error,
        "Two entries of one list carry the same id.",
        "A reference to that id may mean either, and which one is taken is an accident.",
        "Give one of them another id.");

    public override string Say(Problem problem) => $"the id {problem.Argument(0)} stands twice";
}
