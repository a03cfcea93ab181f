using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class RangeReversed : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "range-reversed", RuleFamily.Document, Severity.Error,
        "The lower end of a range is above its upper end.",
        "A reversed range holds nothing, or something else than was meant.",
        "Exchange the two ends, or correct the wrong one.");

    public override string Say(Problem problem) => $"the range starts at {problem.Argument(0)} and ends at {problem.Argument(1)}";
}
