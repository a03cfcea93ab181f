using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class UnknownKey : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "unknown-key", RuleFamily.Document, Severity.Error,
        "A key that the format does not know.",
        "A misspelt key is a statement that nobody reads: the technician believes it is there, and no check sees it.",
        "Take the nearest known key, or move the statement to where it belongs.");

    public override string Say(Problem problem) => problem.Argument(1).Length > 0
        ? $"there is no key {problem.Argument(0)} here; the nearest is {problem.Argument(1)}"
        : $"there is no key {problem.Argument(0)} here";

    public override IEnumerable<Fix> Mend(SourceText source, Problem problem)
    {
        if (problem.Argument(1) is { Length: > 0 } nearest) yield return new($"Write {nearest}", Safe: false, [new TextEdit(source.Path, problem.Span, nearest)]);
    }
}
