using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.References;

public sealed class WedgeDoesNotFitProbe : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "wedge-does-not-fit-probe", RuleFamily.References, Severity.Error,
        "A probe is mounted on a wedge that the library does not list it for.",
        "Another probe's wedge holds the array at another height and slope: exit points and angles are not those that were checked, if it can be mounted at all.",
        "Choose a wedge that fits, or add the probe to the wedge's list where it is known to fit.");

    public override void Check(TechniqueContext context)
    {
        foreach (var probe in context.Technique.Setups.Items.SelectMany(setup => setup.Probes.Items))
        {
            if (!probe.Probe.TryGet(out var probeId) || !probe.Wedge.TryGet(out var wedgeId)) continue;
            if (context.Equipment.Find<ProbeItem>(EquipmentKind.Probe, probeId) is null
                || context.Equipment.Find<WedgeItem>(EquipmentKind.Wedge, wedgeId) is not { Fits.Presence: Presence.Known } wedge
                || wedge.Fits.Items.Any(fits => fits.Value == probeId))
            {
                continue;
            }

            var list = string.Join(", ", wedge.Fits.Items.Select(fits => fits.Value));
            context.Sink.Report(this, probe.Wedge, $"{wedgeId} does not fit {probeId}: it is made for {list}")
                .With("probe", probeId).With("wedge", wedgeId)
                .Related(context.Equipment.LibraryOf(wedge)!.File, wedge.Fits.Span, "what the wedge fits");
        }
    }
}
