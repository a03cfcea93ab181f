using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class OrientationNotSupported : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "orientation-not-supported", RuleFamily.Fit, Severity.Error,
        "The frame is not made for this orientation of weld on this form of part, at any diameter.",
        "A frame for girth weld wheels around the pipe; turned for a longitudinal seam its wheels ride on a curve they were not made for, and "
        + "the probes lift off or skew.",
        "Choose a frame whose limits name this orientation, or correct the orientation.");

    public override void Check(TechniqueContext context)
    {
        foreach (var capacity in FrameCapacity.Of(context))
        {
            if (!capacity.Limits.IsEmpty) continue;
            context.Sink
                .Report(this, capacity.Setup.Frame, $"{capacity.Frame.Id.Value} has no limit for a {capacity.PartName}: it is not made to serve it")
                .With("frame", capacity.Frame.Id.Value!)
                .Related(context.Equipment.LibraryOf(capacity.Frame)!.File, capacity.Frame.Limits.Span, "what the frame serves");
        }
    }
}
