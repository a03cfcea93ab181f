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
            page.Append($"\n## {TitleOf(family.Key)}\n\n| rule | by default | finds |\n|---|---|---|\n");
            foreach (var rule in family) page.Append($"| [{rule.Name}]({rule.Name}.md) | {RulePage.Word(rule.Severity)} | {rule.Summary} |\n");
        }

        return page.ToString();
    }

    /// <summary>The question that a family answers.</summary>
    public static string TitleOf(RuleFamily family) => family switch
    {
        RuleFamily.Document => "Is the text sound?",
        RuleFamily.Administration => "Is the paper in order?",
        RuleFamily.References => "Do the references hold?",
        RuleFamily.Fit => "Does it fit on the part?",
        RuleFamily.Beam => "Does the beam exist?",
        RuleFamily.Coverage => "Does it see the weld?",
        RuleFamily.Acquisition => "Will the data be whole?",
        RuleFamily.Calibration => "Can the result be trusted?",
        RuleFamily.Evaluation => "Can it be judged afterwards?",
        RuleFamily.Waivers => "Are the exceptions in order?",
        RuleFamily.Run => "Are the sets and the run sound?",
        RuleFamily.Workspace => "Does the collection hold together?",
        _ => "What changed?",
    };
}
