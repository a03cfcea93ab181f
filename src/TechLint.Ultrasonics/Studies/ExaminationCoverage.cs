using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>Joins an examination to the coverage kernel: its section at a place of the range, its worst case, its covering offsets.</summary>
internal static class ExaminationCoverage
{
    /// <summary>Rows lie at most a quarter of the shortest wavelength apart.</summary>
    private const double RowsPerWavelength = 4;

    /// <summary>Where no beam has a wavelength nothing is seen, and coarse rows (mm) say so as well.</summary>
    private const double RowStepWithoutBeams = 1;

    private const string BeamsLeftOut = "what tandem and total-focusing beams see is not computed, and the others do not see all";

    public static CoverageResult At(Examination examination, double thickness, double? outsideDiameter) =>
        InputOf(examination, new CoverageCase(thickness, outsideDiameter), new LawCache()) is { } input
            ? Judged(examination, CoverageKernel.Compute(input, traceUnseen: true))
            : None(PassWork.ImpossibleWall);

    public static WorstCoverage Worst(Examination examination)
    {
        var lines = new LawCache();
        var worst = WorstCaseSearch.Find(SearchRange.Of(examination), place => InputOf(examination, place, lines));
        var result = Judged(examination, worst.Result);
        return worst with { Result = result, NotComputed = result.NotComputed };
    }

    public static OffsetWindow? CoveringOffsets(
        Examination examination, string passId, ImmutableArray<int> stations, Band<Length> thickness, Band<Length> reach)
    {
        var index = IndexOf(examination, passId);
        if (index < 0) return null;
        var pass = examination.Passes[index];
        var moved = stations.IsDefaultOrEmpty ? SoundStations(pass) : [.. stations];
        var range = SearchRange.Of(examination) with
        {
            FromThickness = (thickness.From ?? examination.Thickness.From)?.Millimetres ?? double.NaN,
            ToThickness = (thickness.To ?? examination.Thickness.To)?.Millimetres ?? double.NaN,
        };
        var lines = new LawCache();
        return OffsetSearch.Find(
            range, (place, shift) => InputOf(Shifted(examination, index, moved, shift), place, lines), Math.Max(LeastShift(examination, pass, moved), Shift(reach.From, double.NegativeInfinity, offsets => offsets.Max())),
            Shift(reach.To, double.PositiveInfinity, offsets => offsets.Min()));

        // The probe that would leave the reach first decides: towards the weld the nearest one, away from it the farthest.
        double Shift(Length? end, double open, Func<IEnumerable<double>, double> first) => end is { } offset
            ? first(pass.Probes.Where(probe => moved.Contains(probe.Station)).Select(probe => offset.Millimetres - probe.IndexOffset.Millimetres))
            : open;
    }

    public static CoverageResult None(string reason)
    {
        var none = new Share(double.NaN);
        return new CoverageResult(none, none, none, none, [], new Length(double.NaN), new Length(double.NaN), IsComplete: false, reason);
    }

    /// <param name="lines">The laws of a search, worked out once for all places that share them.</param>
    private static CoverageInput? InputOf(Examination examination, CoverageCase place, LawCache lines)
    {
        var passes = ImmutableArray.CreateBuilder<CoveragePass>(examination.Passes.Count);
        double? curved = null;
        foreach (var pass in examination.Passes)
        {
            var diameter = place.OutsideDiameter is { } outside ? new Length(outside) : (Length?)null;
            if (PassSection.Of(examination, pass, new Length(place.Thickness), diameter) is not { } section) return null;
            if (section.Rays.IsCurved) curved = section.OutsideDiameter;
            var (offset, skew) = (pass.Tolerance.IndexOffset.Millimetres, pass.Tolerance.Skew.Radians);
            var sights = PassSights.Of(
                section, lines.Of(section, Within(place.SkewError, skew)), Within(place.LeftError, offset), Within(place.RightError, offset));
            passes.Add(new CoveragePass(pass.ScanningSurface, sights.Lines, sights.Pairs));
        }

        var fromInside = examination.Passes.All(pass => pass.ScanningSurface == Surface.Inside);
        return new CoverageInput(
            place.Thickness, curved, VolumeRectangle.Of(examination.Weld, examination.Volume, place.Thickness, curved, fromInside),
            MirrorGap.Of(examination.Weld.Cap), MirrorGap.Of(examination.Weld.Root), passes.MoveToImmutable(), RowStepOf(examination))
        {
            Misalignment = place.Misalignment,
        };
    }

    /// <summary>A pass that holds its place better than the worst one errs by no more than its own tolerance.</summary>
    private static double Within(double error, double tolerance) => Math.Abs(error) <= tolerance ? error : Math.CopySign(tolerance, error);

    private static double RowStepOf(Examination examination)
    {
        var shortest = double.PositiveInfinity;
        foreach (var pass in examination.Passes)
        {
            foreach (var beam in pass.Beams)
            {
                foreach (var probe in pass.Probes)
                {
                    if (probe.Station != (beam.From ?? beam.Transmit)) continue;
                    foreach (var speeds in new[] { examination.Part.Left, examination.Part.Right })
                    {
                        var speed = beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal;
                        var wavelength = speed?.MillimetresPerMicrosecond / probe.Transducer.Frequency.Megahertz;
                        if (wavelength > 0 && wavelength < shortest) shortest = wavelength.Value;
                    }
                }
            }
        }

        return double.IsFinite(shortest) ? shortest / RowsPerWavelength : RowStepWithoutBeams;
    }

    /// <summary>Beams that are left out could only add: a figure short of all is none while they are missing.</summary>
    private static CoverageResult Judged(Examination examination, CoverageResult result) =>
        result.IsComplete || result.NotComputed is not null
        || !examination.Passes.Any(pass => pass.Beams.Any(beam => beam.Scan is ScanKind.Tandem or ScanKind.TotalFocusing))
            ? result
            : None(BeamsLeftOut);

    private static int IndexOf(Examination examination, string passId)
    {
        for (var index = 0; index < examination.Passes.Count; index++)
        {
            if (string.Equals(examination.Passes[index].Id, passId, StringComparison.Ordinal)) return index;
        }

        return -1;
    }

    private static HashSet<int> SoundStations(Pass pass) =>
        [.. pass.Beams.Where(beam => beam.Scan is ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed).Select(beam => beam.From).OfType<int>()];

    private static Examination Shifted(Examination examination, int index, HashSet<int> stations, double shift)
    {
        var pass = examination.Passes[index];
        var probes = pass.Probes.Select(probe => stations.Contains(probe.Station)
            ? probe with { IndexOffset = new Length(probe.IndexOffset.Millimetres + shift) }
            : probe);
        var passes = examination.Passes.ToArray();
        passes[index] = pass with { Probes = [.. probes] };
        return examination with { Passes = [.. passes] };
    }

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
