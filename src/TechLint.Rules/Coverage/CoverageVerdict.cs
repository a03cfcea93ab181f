using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Examinations;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Coverage;

/// <summary>Whether one examination sees its volume, and if not, whether other index offsets would.</summary>
/// <param name="Worst">The worst case; null where there is no examination.</param>
/// <param name="Required">Share of the volume that must be seen.</param>
/// <param name="Source">Where that comes from; null where the technique's own statement of the volume is all there is.</param>
/// <param name="Holds">Coverage has nothing to say: the volume is seen as required, nobody can tell, or laws that do not exist are told elsewhere.</param>
/// <param name="Advice">Offsets that would serve, where the stated ones do not and others would.</param>
/// <param name="NotComputed">Why nobody can tell.</param>
public sealed record CoverageVerdict(
    WorstCoverage? Worst, Share Required, Citation? Source, bool Holds, OffsetAdvice? Advice, string? NotComputed)
{
    /// <summary>At this share every unseen polygon counts, however small its part of the volume; below it the share does.</summary>
    private const double Whole = 100;

    public static CoverageVerdict Of(TechniqueContext context, ExaminationLink link)
    {
        var limit = context.Requirements.Find(LimitNames.VolumeCovered, QueryFor(context, link));
        var required = new Share(limit?.Value.InBase ?? Whole);
        if (context.StudyOf(link) is not { } study) return new(null, required, limit?.Citation, Holds: true, null, null);
        var worst = study.Coverage;
        if (worst.NotComputed is { } reason) return new(worst, required, limit?.Citation, Holds: true, null, reason);
        var holds = required.Percent >= Whole ? worst.Result.IsComplete : worst.Result.Volume.Percent >= required.Percent;

        // What laws that do not exist would have seen is their consequence: their own rules speak, and once they are mended this one again.
        if (holds || HasBrokenLaws(study)) return new(worst, required, limit?.Citation, Holds: true, null, null);
        return new(worst, required, limit?.Citation, Holds: false, OffsetAdvice.Seek(study, worst, (pass, stations) => OffsetReach.Of(context, link, pass, stations)), null);
    }

    private static bool HasBrokenLaws(Study study) => study.Cases.Any(one => one.Passes.Any(pass => pass.Beams.Any(beam => beam.Laws.Any(law =>
        law.Fault is LawFault.NotRefracted or LawFault.BelowFirstCritical or LawFault.OutsideWedge or LawFault.OutsideArray))));

    private static LimitQuery QueryFor(TechniqueContext context, ExaminationLink link) => new(
        Orientation: context.Technique.Weld.Orientation.IsKnown ? context.Technique.Weld.Orientation.Value : null,
        Form: context.Technique.Component.Form.IsKnown ? context.Technique.Component.Form.Value : null,
        Material: context.Technique.Component.Material.Left.Or(null),
        Thickness: link.Setups[0].Thickness.IsKnown ? link.Setups[0].Thickness.Value : context.Technique.Component.Thickness.Or(default));
}

/// <summary>Which probes to move, and the window of moves that covers.</summary>
/// <param name="PassId">The setup.</param>
/// <param name="Stations">The probes that move together.</param>
/// <param name="Move">How far, away from the weld positive.</param>
/// <param name="WholeBand">The window serves the whole band of thickness; else only the worst thickness.</param>
public sealed record OffsetAdvice(string PassId, ImmutableArray<int> Stations, OffsetWindow Move, bool WholeBand)
{
    public static OffsetAdvice? Seek(Study study, WorstCoverage worst, Func<Pass, ImmutableArray<int>, Band<Length>> reachOf)
    {
        var whole = study.Examination.Thickness;
        var worstOnly = new Band<Length>(worst.Thickness, worst.Thickness);
        return Seek(study, whole, wholeBand: true, reachOf) ?? (whole.From == whole.To ? null : Seek(study, worstOnly, wholeBand: false, reachOf));
    }

    private static OffsetAdvice? Seek(
        Study study, Band<Length> thickness, bool wholeBand, Func<Pass, ImmutableArray<int>, Band<Length>> reachOf)
    {
        foreach (var pass in study.Examination.Passes)
        {
            // All probes with sound beams together first: a frame set for another wall is wrong on both sides at once.
            ImmutableArray<int> stations = [.. SoundStations(pass)];
            if (stations.IsEmpty) continue;
            foreach (var moved in stations.Length == 1 ? [stations] : ImmutableArray.Create([stations, .. stations.Select(station => ImmutableArray.Create(station))]))
            {
                if (study.CoveringOffsets(pass.Id, moved, thickness, reachOf(pass, moved)) is { } window) return new(pass.Id, moved, window, wholeBand);
            }
        }

        return null;
    }

    private static IEnumerable<int> SoundStations(Pass pass) => pass.Beams
        .Where(beam => beam.Scan is ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed && beam.From is not null)
        .Select(beam => beam.From!.Value).Distinct().Order();
}
