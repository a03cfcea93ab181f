using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Tandem;

namespace TechLint.Ultrasonics.Studies;

/// <summary>Joins an examination to the coverage kernel: its section at a place of the range, its worst case, its covering offsets.</summary>
internal static class ExaminationCoverage
{
    private const string TandemLeftOut = "what a tandem pair sees is not computed, and the others do not see all: ";

    private const string ImagesLeftOut = "what a total-focusing image sees is not computed, and the others do not see all: ";

    public static CoverageResult At(Examination examination, double thickness, double? outsideDiameter) =>
        new SectionBuilder(examination).At(new CoverageCase(thickness, outsideDiameter)) is { } input
            ? Judged(examination, CoverageKernel.Compute(input, traceUnseen: true))
            : None(PassWork.ImpossibleWall);

    public static WorstCoverage Worst(Examination examination)
    {
        var builder = new SectionBuilder(examination);
        var worst = WorstCaseSearch.Find(SearchRange.Of(examination), builder.At, RuleOf(builder));
        var result = Judged(examination, worst.Result);
        return worst with { Result = result, NotComputed = result.NotComputed };
    }

    public static WorstCoverage WorstWithDrifts(Examination examination, WorstCoverage stated)
    {
        if (stated.NotComputed is not null) return stated;
        var (speeds, reason) = DriftTolerance.Of(examination);
        if (reason is not null) return stated with { Result = None(reason), NotComputed = reason };
        var range = SearchRange.WithDrifts(examination, speeds);
        if (!range.HasDrifts) return stated;
        var builder = new SectionBuilder(examination);
        var worst = WorstCaseSearch.Find(range, builder.At, RuleOf(builder), traceUnseen: false);
        var result = Judged(examination, worst.Result);
        if (result.NotComputed is null && WorstCaseSearch.IsWorse(stated.Result, result)) return stated;
        return worst with { Result = result, NotComputed = result.NotComputed };
    }

    public static OffsetWindow? CoveringOffsets(
        Examination examination, OffsetMemory memory, string passId, ImmutableArray<int> stations, Band<Length> thickness, Band<Length> reach)
    {
        if (IndexOf(examination, passId) is not { } index) return null;
        var pass = examination.Passes[index];
        var moved = stations.IsDefaultOrEmpty ? SoundStations(pass) : [.. stations];
        var range = SearchRange.Of(examination) with
        {
            FromThickness = (thickness.From ?? examination.Thickness.From)?.Millimetres ?? double.NaN,
            ToThickness = (thickness.To ?? examination.Thickness.To)?.Millimetres ?? double.NaN,
        };
        return OffsetSearch.Find(
            range, Builder(memory.Sections, index, moved), RuleOf(memory.Sections, pass, moved),
            Math.Max(LeastShift(examination, pass, moved), Shift(reach.From, double.NegativeInfinity, offsets => offsets.Max())),
            Shift(reach.To, double.PositiveInfinity, offsets => offsets.Min()), memory.Of(index, moved));

        // The probe that would leave the reach first decides: towards the weld the nearest one, away from it the farthest.
        double Shift(Length? end, double open, Func<IEnumerable<double>, double> first) => end is { } offset
            ? first(pass.Probes.Where(probe => moved.Contains(probe.Station)).Select(probe => offset.Millimetres - probe.IndexOffset.Millimetres))
            : open;
    }

    /// <summary>How far the probes of a pass that send sound beams may move together before the volume is no longer complete.</summary>
    public static OffsetMargin Margin(Examination examination, OffsetMemory memory, string passId, WorstCoverage worst)
    {
        if (worst.NotComputed is { } reason) return new OffsetMargin(null, null, reason);
        if (!worst.Result.IsComplete) return new OffsetMargin(null, null, "the volume is not complete where the probes stand");
        if (IndexOf(examination, passId) is not { } index) return new OffsetMargin(null, null, "there is no such pass");
        var pass = examination.Passes[index];
        var moved = SoundStations(pass);
        if (moved.Count == 0) return new OffsetMargin(null, null, "no probe of this pass sends a sound beam");
        var window = OffsetSearch.Around(
            SearchRange.Of(examination), Builder(memory.Sections, index, moved), RuleOf(memory.Sections, pass, moved), LeastShift(examination, pass, moved),
            double.PositiveInfinity, memory.Of(index, moved));
        return window is null
            ? new OffsetMargin(null, null, "the volume is not complete where the probes stand")
            : new OffsetMargin(new Length(Math.Max(0, -window.From.Millimetres)), new Length(Math.Max(0, window.To.Millimetres)), null);
    }

    private static ShiftedBuilder Builder(SectionBuilder sections, int passIndex, HashSet<int> stations) =>
        (place, shift) => sections.At(place, new ProbeMove(passIndex, stations, shift));

    private static InsetRule RuleOf(SectionBuilder builder) => new(builder.MovesAsOne);

    private static InsetRule RuleOf(SectionBuilder builder, Pass pass, HashSet<int> moved)
    {
        // From inside left is right; and a beam that may point back over its own probe sees from either side.
        var isPlain = pass.ScanningSurface == Surface.Outside && builder.MovesAsOne;
        return RuleOf(builder) with
        {
            MovesLeft = !isPlain || pass.Probes.Any(probe => probe.Side == Side.Left && moved.Contains(probe.Station)),
            MovesRight = !isPlain || pass.Probes.Any(probe => probe.Side == Side.Right && moved.Contains(probe.Station)),
            CanRuleOut = !pass.Beams.Any(beam =>
                beam.Focus.Kind == FocusKind.Across
                || (beam.Scan == ScanKind.TotalFocusing && beam.From is { } imager && moved.Contains(imager))
                || (beam.Scan is ScanKind.Tofd or ScanKind.Tandem && ((beam.Transmit is { } sender && moved.Contains(sender)) || (beam.Receive is { } receiver && moved.Contains(receiver))))),
        };
    }

    public static CoverageResult None(string reason)
    {
        var none = new Share(double.NaN);
        return new CoverageResult(none, none, none, none, [], new Length(double.NaN), new Length(double.NaN), IsComplete: false, reason);
    }

    /// <summary>Beams that are left out could only add: a figure short of all is none while they are missing.</summary>
    private static CoverageResult Judged(Examination examination, CoverageResult result)
    {
        if (result.IsComplete || result.NotComputed is not null) return result;
        if (TandemPair.Missing(examination) is { } tandem) return None(TandemLeftOut + tandem);
        return ImageMissing(examination) is { } reason ? None(ImagesLeftOut + reason) : result;
    }

    /// <summary>Why some image of the examination cannot be worked out at its thinnest wall; null where all can.</summary>
    private static string? ImageMissing(Examination examination)
    {
        if ((examination.Thickness.From ?? examination.Thickness.To) is not { } thickness) return null;
        var diameter = examination.OutsideDiameter is { } band ? band.From ?? band.To : null;
        foreach (var pass in examination.Passes)
        {
            if (PassSection.Of(examination, pass, thickness, diameter) is not { } section) continue;
            foreach (var beam in pass.Beams)
            {
                if (beam.Scan == ScanKind.TotalFocusing && ImageGeometry.Of(section, beam).NotComputed is { } reason) return reason;
            }
        }

        return null;
    }

    private static int? IndexOf(Examination examination, string passId)
    {
        for (var index = 0; index < examination.Passes.Count; index++)
        {
            if (string.Equals(examination.Passes[index].Id, passId, StringComparison.Ordinal)) return index;
        }

        return null;
    }

    private static HashSet<int> SoundStations(Pass pass) =>
        [.. pass.Beams.Where(beam => beam.Scan is ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed or ScanKind.TotalFocusing).Select(beam => beam.From).OfType<int>()];

    /// <summary>No wedge may climb onto the reinforcement of the surface that it rides on.</summary>
    private static double LeastShift(Examination examination, Pass pass, HashSet<int> stations)
    {
        var inside = pass.ScanningSurface == Surface.Inside;
        if ((inside ? examination.Weld.Root : examination.Weld.Cap) is not { IsFlush: false } metal) return double.NegativeInfinity;
        var centre = inside ? -metal.Centre.Millimetres : metal.Centre.Millimetres;
        var least = double.NegativeInfinity;
        foreach (var probe in pass.Probes)
        {
            if (!stations.Contains(probe.Station)) continue;
            var toe = (metal.Width.Millimetres / 2) + (probe.Side == Side.Left ? -centre : centre);
            least = Math.Max(least, toe - probe.IndexOffset.Millimetres);
        }

        return least;
    }
}
