using TechLint.Model.Equipment;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Fit;

public sealed class ProbeCountOverDiameterLimit : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "probe-count-over-diameter-limit", RuleFamily.Fit, Severity.Error,
        "More probes are mounted than the frame carries at some outside diameter of the range.",
        "On a pipe below the frame's limit the probes cannot all touch: some ride on an edge or in the air, and their data lines are empty.",
        "Mount fewer probes and scan in passes, choose a frame made for the diameter, or narrow the range of diameters.");

    public override void Check(TechniqueContext context)
    {
        foreach (var capacity in FrameCapacity.Of(context))
        {
            var probes = capacity.Setup.Probes.Items.Length;
            if (capacity.Limits.IsEmpty || probes == 0 || capacity.Unserved(probes) is not { } gap) continue;
            var most = capacity.Limits.Where(limit => limit.Probes.IsKnown && Serves(limit, gap.From)).Select(limit => limit.Probes.Value).DefaultIfEmpty(0).Max();
            var place = capacity.OutsideDiameter is null ? "on a flat part" : $"at outside diameter {Write(capacity, gap.From)}";
            var carried = most == 0 ? "carries none" : $"carries {most}";
            var draft = context.Sink
                .Report(
                    this, capacity.Setup.Probes.Span, capacity.Setup.Probes.Path,
                    $"{probes} probes on {capacity.Frame.Id.Value}, which {carried} {place}")
                .With("probes", probes, "").With("carried", most, "");
            if (capacity.OutsideDiameter is not null)
            {
                draft.With("outside-diameter", gap.From, "mm");
                var enough = capacity.Limits
                    .Where(limit => limit.Probes.IsKnown && limit.Probes.Value >= probes && limit.OutsideDiameter.IsKnown && limit.OutsideDiameter.Value.From is not null)
                    .OrderBy(limit => limit.OutsideDiameter.Value.FromExact).FirstOrDefault();
                if (enough is not null) draft.Detail($"it carries {probes} {enough.OutsideDiameter.Value}");
            }

            draft.Related(context.Equipment.LibraryOf(capacity.Frame)!.File, capacity.Frame.Limits.Span, "the frame's limits");
        }
    }

    private static bool Serves(FrameLimit limit, decimal diameter) => diameter == decimal.MaxValue
        ? limit.OutsideDiameter.Or(default).To is null
        : limit.OutsideDiameter.Or(default).Contains(diameter);

    private static string Write(FrameCapacity capacity, decimal millimetres)
    {
        var unit = capacity.OutsideDiameter is { From: { } from } ? from.Unit : Units.Get("mm");
        return $"{Digits.Text(Digits.Rounded(unit.FromBase(millimetres), 3))} {unit.Symbol}";
    }
}
