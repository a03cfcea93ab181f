using TechLint.Model.Examinations;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class SetupsOverlap : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "setups-overlap", RuleFamily.Fit, Severity.Error,
        "Two setups claim the same thickness and diameter, and are not numbered as passes of one examination.",
        "Two sets of positions for one wall leave the choice to whoever scans, and each of them is judged alone.",
        "Part the bands so that they touch at most, or number the setups as passes where both are meant to be scanned.");

    public override void Check(TechniqueContext context)
    {
        var technique = context.Technique;
        var setups = technique.Setups.Items;
        for (var later = 1; later < setups.Length; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                var (first, second) = (setups[earlier], setups[later]);
                if (!SetupGroups.AreInConflict(technique, first, second)) continue;
                var same = first.Pass.IsKnown && second.Pass.IsKnown ? $", both as pass {first.Pass.Value}" : "";
                context.Sink
                    .Report(
                        this, second.Id.IsKnown ? second.Id.Span : second.Map.Span, second.Path,
                        $"{second.Name} and {first.Name} claim the same thickness and diameter{same}")
                    .Related(technique.File, first.Id.IsKnown ? first.Id.Span : first.Map.Span, "the other setup");
                break;
            }
        }
    }
}
