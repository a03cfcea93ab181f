using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class ValueImplausible : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "value-implausible", RuleFamily.Document, Severity.Error,
        "A quantity that the trade does not meet, as by a slip of the decimal point or of inch for millimetre.",
        "Walls of 12 in and probes of 50 MHz come from slips of the pen; everything computed from them is worthless.",
        "Correct the number or its unit.");

    public override string Say(Problem problem) => $"{problem.Argument(0)} is not plausible here: the trade meets {problem.Argument(1)}, and what rests on it is not checked";
}
