using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class DiameterWithoutSetup : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "diameter-without-setup", RuleFamily.Fit, Severity.Error,
        "Part of the component's range of outside diameter is served by no setup.",
        "The technician meets a pipe that the technique claims to cover and finds no positions for it. Curvature changes the skip and the "
        + "contact of the sole, so those of another diameter need not serve.",
        "Extend a band, add a setup, or narrow the range of diameters. Bands that touch leave no gap.");

    public override void Check(TechniqueContext context) =>
        BandGap.Report(this, context, "outside diameter", context.Technique.Component.OutsideDiameter, setup => setup.OutsideDiameter);
}
