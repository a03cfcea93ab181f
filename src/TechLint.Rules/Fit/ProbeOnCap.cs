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
                var reinforcement = pass.ScanningSurface == Surface.Outside ? examination.Weld.Cap : examination.Weld.Root;
                if (reinforcement is null || reinforcement.IsFlush) continue;
                var setup = link.Setups.First(member => member.Name == pass.Id);
                Check(context, setup, pass, reinforcement);
            }
        }
    }

    private void Check(TechniqueContext context, Setup setup, Pass pass, Reinforcement reinforcement)
    {
        var limit = context.Requirements.Find(LimitNames.CapClearance, new LimitQuery());
        var clearance = limit?.Value.InBase ?? 0;
        var name = pass.ScanningSurface == Surface.Outside ? "cap" : "root";
        foreach (var use in setup.Probes.Items)
        {
            if (!use.Side.IsKnown || !use.IndexOffset.TryGet(out var offset)) continue;

            // Seen from inside, the section is mirrored, and so is the side the reinforcement leans to.
            var lean = pass.ScanningSurface == Surface.Outside ? reinforcement.Centre.Millimetres : -reinforcement.Centre.Millimetres;
            var toe = (reinforcement.Width.Millimetres / 2) + (use.Side.Value == Side.Left ? -lean : lean);
            var nearest = offset.InBase - pass.Tolerance.IndexOffset.Millimetres;
            if (nearest >= toe + clearance) continue;
            var over = Digits.Apart(nearest, toe + clearance, 1) ?? 0;
            context.Sink
                .Report(
                    this, use.IndexOffset,
                    $"the wedge at station {use.Station.Or(0)} comes to {Digits.Text(over)} mm from the centreline, where the {name} needs {Digits.Text(Digits.Rounded(toe + clearance, 2) ?? 0)} mm")
                .With("nearest", over, "mm").With("toe", toe, "mm").With("clearance", clearance, "mm")
                .With("positioning-tolerance", pass.Tolerance.IndexOffset.Millimetres, "mm")
                .Detail($"index offset {offset.Display()} less the tolerance; half the {name} is {Digits.Text(Digits.Rounded(toe, 2) ?? 0)} mm on this side, clearance {Digits.Text(Digits.Rounded(clearance, 2) ?? 0)} mm")
                .Under(limit?.Citation)
                .Related(context.Technique.File, (pass.ScanningSurface == Surface.Outside ? context.Technique.Weld.Cap : context.Technique.Weld.Root).Span, $"the {name}");
        }
    }
}
