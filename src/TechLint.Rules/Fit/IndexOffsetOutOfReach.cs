using TechLint.Model.Equipment;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class IndexOffsetOutOfReach : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "index-offset-out-of-reach", RuleFamily.Fit, Severity.Error,
        "The frame cannot hold a probe at the stated index offset.",
        "Whoever mounts the probe takes the nearest place that the frame offers, and the checked positions are no longer the scanned ones.",
        "Choose an offset within the frame's reach, or another frame.");

    public override void Check(TechniqueContext context)
    {
        foreach (var setup in context.Technique.Setups.Items)
        {
            if (!setup.Frame.TryGet(out var id) || context.Equipment.Find<FrameItem>(EquipmentKind.Frame, id) is not { IndexOffset: { IsKnown: true, Value: var reach } } frame) continue;
            foreach (var probe in setup.Probes.Items)
            {
                if (!probe.IndexOffset.TryGet(out var offset) || reach.Contains(offset.Exact)) continue;
                context.Sink
                    .Report(this, probe.IndexOffset, $"{id} holds a probe at {reach} from the centreline, not at {offset.Display()}")
                    .With("index-offset", offset)
                    .Related(context.Equipment.LibraryOf(frame)!.File, frame.IndexOffset.Span, "the frame's reach");
            }
        }
    }
}
