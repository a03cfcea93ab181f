using TechLint.Engine;
using TechLint.Rules.Registry;

namespace TechLint.Reports;

/// <summary>What <c>explain</c> tells: one rule, or the list of all.</summary>
public static class ExplainReport
{
    /// <summary>Stands with every rule: the tool reads a technique, it does not approve one.</summary>
    public const string Caution =
        "This rule defers to the governing code, to the owner's specification and to licensed practice: where they differ from it, they "
        + "hold. No check by TechLint replaces the approval of the technique by a qualified Level III or its demonstration on a "
        + "representative block.";

    public static void WriteRule(TextWriter output, RuleDescription rule, IReadOnlyCollection<LimitSource> limits)
    {
        output.Write($"{rule.Name} ({JsonReport.Name(rule.Severity)}, {Name(rule.Family)})\n\n");
        Paragraphs.Write(output, "", rule.Summary);
        Section(output, "Why", rule.Why);
        Section(output, "What to do", rule.Remedy);
        if (rule.Limits.Length > 0) WriteLimits(output, rule, limits);
        Section(output, "Caution", Caution);
    }

    /// <param name="rules">By family, in the order given.</param>
    public static void WriteList(TextWriter output, IReadOnlyCollection<RuleDescription> rules)
    {
        var width = rules.Select(rule => rule.Name.Length).DefaultIfEmpty().Max();
        var first = true;
        foreach (var family in rules.GroupBy(rule => rule.Family))
        {
            output.Write($"{(first ? "" : "\n")}{family.Key.Question()} ({Name(family.Key)})\n");
            first = false;
            foreach (var rule in family) output.Write($"  {rule.Name.PadRight(width)}  {JsonReport.Name(rule.Severity),-7}  {rule.Summary}\n");
        }
    }

    internal static string Name(RuleFamily family) => family.ToString().ToLowerInvariant();

    private static void WriteLimits(TextWriter output, RuleDescription rule, IReadOnlyCollection<LimitSource> limits)
    {
        output.Write("\nLimits\n");
        foreach (var name in rule.Limits)
        {
            output.Write($"  {name}\n");
            var sources = limits.Where(limit => string.Equals(limit.Limit, name, StringComparison.Ordinal)).ToList();
            if (sources.Count == 0) Paragraphs.Write(output, "    ", "No built-in requirement set states it: an owner's set may.");
            foreach (var limit in sources)
            {
                var citation = limit.Citation;
                Paragraphs.Write(output, "    ", $"{citation.Set}: {limit.Text}. {citation.Source} ({TextReport.BasisText(citation.Basis)})");
            }
        }
    }

    private static void Section(TextWriter output, string title, string text)
    {
        output.Write($"\n{title}\n");
        Paragraphs.Write(output, "  ", text);
    }
}
