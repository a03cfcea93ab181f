using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Beam;

public sealed class ExitOutsideWedge : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "exit-outside-wedge", RuleFamily.Beam, Severity.Error,
        "The sound of a law would leave the wedge outside its sole.",
        "Past the front face there is air, and before the rear there is damping: that law radiates little or nothing, and its part of the picture is empty.",
        "Choose other elements, smaller angles, or a longer wedge.");

    public override void Check(TechniqueContext context)
    {
        foreach (var (setting, _, one, laws) in LawRules.Faulty(context, LawFault.OutsideWedge))
        {
            var (span, path) = LawRules.AnglePlace(setting);
            // Past the front where any is; else the one farthest behind the rear.
            var worst = laws.MinBy(law => law.ExitBehindFront.Millimetres)!;
            if (worst.ExitBehindFront.Millimetres >= 0) worst = laws.MaxBy(law => law.ExitBehindFront.Millimetres)!;
            var past = worst.ExitBehindFront.Millimetres;
            var angle = Digits.Text(Digits.Rounded(worst.Angle.Degrees, 2) ?? 0);
            var where = past < 0
                ? $"leaves the wedge {Digits.Text(Digits.Apart(-past, 0, 1) ?? 0)} mm past its front face"
                : $"leaves the wedge {Digits.Text(Digits.Rounded(past, 1) ?? 0)} mm behind its front face, where it has ended";
            context.Sink.Report(this, span, path, $"the {angle} deg law of {setting.Name} {where}")
                .With("angle", worst.Angle.Degrees, "deg").With("exit-behind-front", past, "mm").With("laws", laws.Length, "")
                .With("thickness", one.Thickness.Millimetres, "mm");
        }
    }
}
