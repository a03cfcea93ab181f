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

    /// <summary>The YAML reader speaks in whole sentences; a finding has neither capital nor full stop.</summary>
    public override string Say(Problem problem)
    {
        var sentence = problem.Argument(0).TrimEnd('.');
        return sentence.Length == 0 ? sentence : char.ToLowerInvariant(sentence[0]) + sentence[1..];
    }
}
