using System.Text;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Tests.Tools.Fixtures;

namespace TechLint.Tests.Tools.Pages;

/// <summary>A rule's page, made from its description and its fixture.</summary>
internal static class RulePage
{
    public static string Of(RuleDescription rule, Fixture fixture)
    {
        var page = new StringBuilder();
        page.Append($"<!-- Made by: {RulePages.Command} -->\n\n# {rule.Name}\n\n");
        page.Append($"*{rule.Family.Question()}: {Word(rule.Severity)} by default*\n\n{rule.Summary}\n");
        Section(page, "Why it matters", rule.Why);
        Section(page, "What to do", rule.Remedy);
        if (rule.Limits.Length > 0) Section(page, "Limits", Limits(rule));
        Section(page, "Example", fixture.Prose);
        foreach (var section in fixture.Sections) page.Append($"\n### {section.Title}\n\n{Shown(section.Markdown)}\n");
        Section(page, "What this finding is not", Cautions);
        return page.ToString();
    }

    public static string Word(Severity severity) => severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "note" };

    private const string Cautions =
        """
        TechLint checks a written technique. It defers to the governing code, to the owner's specification and to licensed practice, and replaces none of them. A technique without findings still needs the approval of a Level III and a demonstration on a representative block before it is used.
        """;

    private static void Section(StringBuilder page, string title, string text) => page.Append($"\n## {title}\n\n{text}\n");

    private static string Limits(RuleDescription rule)
    {
        var text = new StringBuilder("The rule reads these limits from the requirement sets that judge the technique; an owner's set may tighten them. The built-in sets say:\n\n");
        text.Append("| limit | set | asks | source | basis |\n|---|---|---|---|---|\n");
        foreach (var limit in RuleBook.LimitsOf(rule))
        {
            text.Append($"| `{limit.Limit}` | `{limit.Citation.Set}` | {limit.Text} | {limit.Citation.Source} | {limit.Citation.BasisText} |\n");
        }

        return text.ToString().TrimEnd('\n');
    }

    /// <summary>The blocks as they stand, with the name of the file before each; headings one level lower.</summary>
    private static string Shown(string markdown)
    {
        var lines = markdown.Split('\n').Select(line =>
        {
            if (line.StartsWith("### ", StringComparison.Ordinal)) return "#" + line;
            if (!line.StartsWith("```", StringComparison.Ordinal) || line == "```") return line;
            var head = BlockHead.Read("", line[3..]);
            return $"`{head.File}`:\n\n```{(head.Kind == "hex" ? "text" : head.Kind)}";
        });
        return string.Join('\n', lines);
    }
}
