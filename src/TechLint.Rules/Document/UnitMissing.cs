using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class UnitMissing : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "unit-missing", RuleFamily.Document, Severity.Error,
        "A number stands without its unit.",
        "A bare 20 may be millimetres or inches; on site both are in use, and the wrong guess scans the wrong place.",
        "Write the unit behind the number.");

    public override string Say(Problem problem) => $"{problem.Argument(0)} has no unit: {string.Join(" or ", Units(problem))} would serve";

    public override IEnumerable<Fix> Mend(SourceText source, Problem problem) => Units(problem)
        .Select(unit => new Fix($"Write {problem.Argument(0)} {unit}", Safe: false, [new TextEdit(source.Path, problem.Span, $"{problem.Argument(0)} {unit}")]));

    /// <summary>The units that an author most likely meant: those in front.</summary>
    private static IEnumerable<string> Units(Problem problem) =>
        problem.Argument(1).Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Take(2);
}
