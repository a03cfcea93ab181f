using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Fit;

public sealed class ProbeOnCap : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "probe-on-cap", RuleFamily.Fit, Severity.Error,
        "The front of a wedge would ride on the reinforcement: it stands closer to the centreline than the toe plus the clearance.",
        "A wedge that climbs the cap lifts off and tilts. Coupling is lost where the root passes below, and the angles in the part are no "
        + "longer the stated ones.",
        "Move the probe back by the missing distance, use a wedge with a shorter nose, or have the reinforcement ground flush.",
        LimitNames.CapClearance.Name);

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Linked.Examinations)
        {
            if (link.Examination is not { } examination) continue;
            foreach (var pass in examination.Passes)
            {
                var setup = link.Setups.First(member => member.Name == pass.Id);
                foreach (var use in setup.Probes.Items)
                {
                    if (!use.Side.IsKnown || !use.IndexOffset.TryGet(out var offset)) continue;
                    if (CapClearance.Of(context, examination, pass, use.Side.Value) is not { } clear || offset.InBase >= clear.LeastOffset) continue;
                    Report(context, use, offset, pass, clear);
                }
            }
        }
    }

    private void Report(TechniqueContext context, ProbeUse use, Quantity offset, Pass pass, CapClearance clear)
    {
        var tolerance = pass.Tolerance.IndexOffset.Millimetres;
        var needed = clear.Toe + clear.Clearance;
        var nearest = Digits.Apart(offset.InBase - tolerance, needed, 1) ?? 0;
        context.Sink
            .Report(
                this, use.IndexOffset,
                $"the wedge at station {use.Station.Or(0)} may come to {Digits.Text(nearest)} mm from the centreline, and the {clear.Name} needs {Show(needed)} mm")
            .With("nearest", nearest, "mm").With("toe", clear.Toe, "mm").With("clearance", clear.Clearance, "mm").With("positioning-tolerance", tolerance, "mm")
            .Detail($"index offset {offset.Display()}, positioning tolerance {Show(tolerance)} mm; the {clear.Name} reaches {Show(clear.Toe)} mm on this side, clearance {Show(clear.Clearance)} mm")
            .Under(clear.Source)
            .Related(context.Technique.File, (clear.Name == "cap" ? context.Technique.Weld.Cap : context.Technique.Weld.Root).Span, $"the {clear.Name}");
    }

    private static string Show(double millimetres) => Digits.Text(Digits.Rounded(millimetres, 2) ?? 0);
}
