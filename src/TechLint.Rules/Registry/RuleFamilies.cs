namespace TechLint.Rules.Registry;

public static class RuleFamilies
{
    /// <summary>What a reviewer asks, and the rules of a family answer.</summary>
    public static string Question(this RuleFamily family) => family switch
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
