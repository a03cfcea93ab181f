namespace TechLint.Rules.Registry;

public enum RuleFamily
{
    Document, Administration, References, Fit, Beam, Coverage, Acquisition, Calibration, Evaluation, Waivers, Run, Workspace, Compare,
}
