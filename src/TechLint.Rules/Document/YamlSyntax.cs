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

    public override string Say(Problem problem) => Sentence(problem.Argument(0));

    /// <summary>The reader speaks in whole sentences; findings have no full stop and start small.</summary>
    private static string Sentence(string text) => text.Length == 0 ? "this is no YAML" : char.ToLowerInvariant(text[0]) + text[1..].TrimEnd('.');
}
