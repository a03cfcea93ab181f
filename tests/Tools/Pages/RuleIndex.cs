using System.Text;
using TechLint.Engine;
using TechLint.Rules.Registry;

namespace TechLint.Tests.Tools.Pages;

/// <summary>The catalogue of rules by family.</summary>
internal static class RuleIndex
{
    public static string Text()
    {
        var page = new StringBuilder($"<!-- Made by: {RulePages.Command} -->\n\n# The rules\n\n");
        page.Append("What TechLint looks for in a technique, by the question that a reviewer asks. `techlint explain RULE` prints the same at a terminal.\n");
        foreach (var family in RuleBook.All.GroupBy(rule => rule.Family))
        {
            page.Append($"\n## {family.Key.Question()}\n\n| rule | by default | finds |\n|---|---|---|\n");
            foreach (var rule in family) page.Append($"| [{rule.Name}]({rule.Name}.md) | {RulePage.Word(rule.Severity)} | {rule.Summary} |\n");
        }

        return page.ToString();
    }
}
