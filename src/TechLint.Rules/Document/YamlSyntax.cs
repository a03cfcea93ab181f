using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Rules.Document;

public sealed class YamlSyntax : ProblemRule
{
    public override RuleDescription Description { get; } = new(
        "yaml-syntax", RuleFamily.Document, Severity.Error,
        "The text is not YAML at this place.",
        "What stands there cannot be read by any program, and a reader may take it for something else than its author meant.",
        "Correct the characters that the finding marks; the rest of the file is checked all the same.");

    public override string Say(Problem problem) => problem.Argument(0);
}
