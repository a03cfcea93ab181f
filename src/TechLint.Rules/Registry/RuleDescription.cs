using TechLint.Rules.Findings;

namespace TechLint.Rules.Registry;

/// <summary>What <c>explain</c>, the rule's page and SARIF tell of a rule. Each text is one or more plain sentences.</summary>
/// <param name="Name">Kebab-case; never reused.</param>
/// <param name="Severity">By default.</param>
/// <param name="Summary">What it finds, in one sentence.</param>
/// <param name="Why">What goes wrong at the pipe when it is not heeded.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Limits">Names of the limits of requirement sets that it reads; empty where none.</param>
public sealed record RuleDescription(
    string Name, RuleFamily Family, Severity Severity, string Summary, string Why, string Remedy, params string[] Limits);
