using System.Collections.Immutable;
using TechLint.Model.Equipment;
using TechLint.Model.Examinations;
using TechLint.Rules.Fit;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Coverage;

/// <summary>The index offsets that a set of probes may take: clear of the reinforcement, and held by the frame.</summary>
internal static class OffsetReach
{
    public static Band<Length> Of(TechniqueContext context, ExaminationLink link, Pass pass, ImmutableArray<int> stations)
    {
        double? least = null;
        double? most = null;
        foreach (var probe in pass.Probes.Where(probe => stations.Contains(probe.Station)))
        {
            if (CapClearance.Of(context, link.Examination!, pass, probe.Side) is { } clear) least = Math.Max(least ?? clear.LeastOffset, clear.LeastOffset);
        }

        var setup = link.Setups.First(member => member.Name == pass.Id);
        if (setup.Frame.TryGet(out var id) && context.Equipment.Find<FrameItem>(EquipmentKind.Frame, id) is { IndexOffset: { IsKnown: true, Value: var held } })
        {
            if (held.From is { } from) least = Math.Max(least ?? from.InBase, from.InBase);
            if (held.To is { } to) most = to.InBase;
        }

        return new(least is { } l ? new Length(l) : null, most is { } m ? new Length(m) : null);
    }
}
