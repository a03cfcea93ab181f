using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class WrongValue : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "wrong-value", RuleFamily.Document, Severity.Error,
        "A value is not of the kind that belongs there.",
        "A word where a number belongs, or a number out of all possibility, is read by nobody as its author meant it.",
        "Write what the finding says belongs there.");

    public override string Say(Problem problem) => $"{problem.Argument(0)} is no value here: {problem.Argument(1)} belongs here";

    public override IEnumerable<Fix> Mend(SourceText source, Problem problem)
    {
        if (problem.Argument(2) is { Length: > 0 } serving) yield return new($"Write {serving}", Safe: false, [new TextEdit(source.Path, problem.Span, serving)]);
    }
}
