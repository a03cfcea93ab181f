using TechLint.Model.Binding;
using TechLint.Model.Techniques;
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
                if (!Claim(technique, setups[earlier], setups[later])) continue;
                var (first, second) = (setups[earlier], setups[later]);
                if (first.Pass.IsBroken || second.Pass.IsBroken || (first.Pass.IsKnown && second.Pass.IsKnown && first.Pass.Value != second.Pass.Value)) continue;
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

    private static bool Claim(Technique technique, Setup first, Setup second) =>
        Share(first.Thickness, second.Thickness, technique.Component.Thickness)
        && Share(first.OutsideDiameter, second.OutsideDiameter, technique.Component.OutsideDiameter);

    private static bool Share(Bound<QuantityBand> first, Bound<QuantityBand> second, Bound<QuantityBand> whole)
    {
        if (first.IsBroken || second.IsBroken || whole.IsBroken) return false;
        var left = first.IsKnown ? first.Value : whole.Or(default);
        var right = second.IsKnown ? second.Value : whole.Or(default);
        return left == right || left.Overlaps(right);
    }
}
