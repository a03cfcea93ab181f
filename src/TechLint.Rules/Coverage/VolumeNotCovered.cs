using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Coverage;

/// <summary>Speaks where no index offset would mend it; else <see cref="Fit.IndexOffsetAgainstThickness"/> does.</summary>
public sealed class VolumeNotCovered : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "volume-not-covered", RuleFamily.Coverage, Severity.Error,
        "Part of the examined volume is seen by no beam of the setup, somewhere in its range of thickness, diameter and tolerance.",
        "A flaw in the unseen part gives no indication. The record looks complete, the weld is accepted, and nobody can tell afterwards "
        + "that nothing ever looked there.",
        "Widen the sweep of angles, add a leg, a beam or a probe, lengthen the recorded window, split the thickness into bands, or state "
        + "a smaller volume where the governing code allows it.",
        LimitNames.VolumeCovered.Name);

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Linked.Examinations)
        {
            var verdict = context.VerdictOf(link);
            if (verdict.Holds || verdict.Advice is not null) continue;
            var setup = link.Setups[0];
            var place = setup.Probes.Items.FirstOrDefault()?.IndexOffset;
            var (span, path) = place is { IsKnown: true } known ? (known.Span, known.Path) : (setup.Map.Span, setup.Path);
            context.Sink
                .Report(this, span, path, $"the beams of {setup.Name} leave {UnseenText.Share(verdict)} of the weld volume unseen at {UnseenText.Case(verdict.Worst!)}")
                .WithCoverage(verdict)
                .Detail("no index offset within reach would see it all: change the angles, the legs, the window, or the number of beams");
        }
    }
}
