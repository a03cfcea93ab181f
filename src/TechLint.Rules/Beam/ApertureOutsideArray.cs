using TechLint.Model.Equipment;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Beam;

public sealed class ApertureOutsideArray : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "aperture-outside-array", RuleFamily.Beam, Severity.Error,
        "The aperture takes elements that the array does not have.",
        "The instrument refuses the law, or fires fewer elements than the technique says, with another exit point and a wider beam.",
        "Keep first + count - 1 within the array's elements.");

    public override void Check(TechniqueContext context)
    {
        foreach (var setup in context.Technique.Setups.Items)
        {
            foreach (var beam in setup.Beams.Items)
            {
                var aperture = beam.Map.Map("aperture");
                if (!beam.From.TryGet(out var station) || !aperture.Integer("count").TryGet(out var count)) continue;
                var mount = setup.Probes.Items.FirstOrDefault(probe => probe.Station.IsKnown && probe.Station.Value == station);
                if (mount is null || !mount.Probe.TryGet(out var id) || context.Equipment.Find<ProbeItem>(EquipmentKind.Probe, id) is not { } probe) continue;
                if (!probe.Map.Integer("elements").TryGet(out var elements)) continue;
                var first = aperture.Integer("first").Or(1) is var value and > 0 ? value : 1;
                var last = Math.Max(first + count - 1, aperture.Integer("last").Or(0));
                if (last <= elements) continue;
                context.Sink
                    .Report(this, aperture.Span, aperture.Path, $"{beam.Name} takes elements up to {last}, and {id} has {elements}")
                    .With("last-element", last, "").With("elements", elements, "")
                    .Related(context.Equipment.LibraryOf(probe)!.File, probe.Id.Span, "the array");
            }
        }
    }
}
