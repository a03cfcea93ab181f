using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class ThicknessWithoutSetup : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "thickness-without-setup", RuleFamily.Fit, Severity.Error,
        "Part of the component's range of thickness is served by no setup.",
        "The technician meets a wall that the technique claims to cover and finds no positions for it, or takes those of the nearest band, "
        + "which nobody has checked at this wall.",
        "Extend a band, add a setup, or narrow the range of thickness. Bands that touch leave no gap.");

    public override void Check(TechniqueContext context) =>
        BandGap.Report(this, context, "thickness", context.Technique.Component.Thickness, setup => setup.Thickness);
}
