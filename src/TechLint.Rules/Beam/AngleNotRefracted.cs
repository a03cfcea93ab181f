using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Beam;

public sealed class AngleNotRefracted : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "angle-not-refracted", RuleFamily.Beam, Severity.Error,
        "An angle in the part cannot come out of this wedge, or comes out with a second wave beside it.",
        "Beyond the critical angle no beam enters the part. A transverse beam asked for below the first critical angle comes with a longitudinal one, "
        + "whose echoes cannot be told from the others.",
        "Choose angles that the wedge refracts, or a wedge of another material.");

    public override void Check(TechniqueContext context)
    {
        foreach (var (setting, beam, one, laws) in LawRules.Faulty(context, LawFault.NotRefracted, LawFault.BelowFirstCritical))
        {
            var (span, path) = LawRules.AnglePlace(setting);
            var worst = laws[0].Fault == LawFault.NotRefracted ? laws[^1] : laws[0];
            var angle = Digits.Text(Digits.Rounded(worst.Angle.Degrees, 2) ?? 0);
            var message = worst.Fault == LawFault.NotRefracted
                ? $"no beam of {angle} deg comes out of the wedge of {setting.Name}: its sound is too fast for it"
                : $"at {angle} deg {setting.Name} is below the first critical angle: a longitudinal wave enters the part as well";
            context.Sink.Report(this, span, path, message).With("angle", worst.Angle.Degrees, "deg").With("laws", laws.Length, "")
                .With("thickness", one.Thickness.Millimetres, "mm");
        }
    }
}
