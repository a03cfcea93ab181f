using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>Builds the section of one case; null where it cannot be built.</summary>
internal delegate CoverageInput? CoverageBuilder(CoverageCase place);

/// <summary>
/// The least coverage over thickness, diameter and positioning tolerance, and where it is; over speeds of sound and misaligned edges as well where the range holds
/// them (<see cref="SearchRange.WithDrifts"/>).
/// </summary>
/// <remarks>
/// A search, not a proof. First every thickness sample (<see cref="ThicknessRatio"/> apart, ends included, at most <see cref="MostThicknesses"/>), at each diameter
/// of the range, with every combination of the ends of what all probes share (skew, speeds, misalignment), is looked at by rows <see cref="ScreeningStep"/> apart: where it is whole though the sound of
/// each side is drawn in by the offset's tolerance, no error of offset can open it (<see cref="InsetRule"/>), and it is settled. Of the rest the worst
/// are looked at with the offset's tolerance at its corners and the middles between them; about the worst of these the thickness is followed by golden
/// section down to <see cref="ThicknessResolution"/> and the diameter at the middle of its band of curvature. The finalists, and the stated places at all ends of the
/// band, are computed by rows a quarter of a wavelength apart, and the worst of them is the answer; where every case is settled with nothing at all unseen, the
/// thinnest stands for all. Against a finer run by brute force it misses less than
/// 0.5 % of coverage (tests/Validation, WorstCaseTests: what was compared and what was found). Coverage that dips and rises again between two
/// thickness samples by more than that would be missed.
/// </remarks>
internal static class WorstCaseSearch
{
    /// <summary>The worst thickness is known to this, mm.</summary>
    public const double ThicknessResolution = 0.1;

    /// <summary>A section keeps its shape when all lengths grow alike: samples lie by a ratio apart, not by a length.</summary>
    public const double ThicknessRatio = 1.05;

    public const int MostThicknesses = 17;

    /// <summary>Rows of a first look lie this far apart, mm: what is too large to be tolerated cannot lie between two of them.</summary>
    public const double ScreeningStep = UnseenParts.Tolerated;

    /// <summary>How many cases of the first look are followed on, and how many of those are computed in full.</summary>
    private const int Followed = 6;
    private const int Finalists = 4;

    /// <summary>How many are followed to their corners while nothing incomplete has been found.</summary>
    private const int Doubted = 48;

    /// <summary>Bands narrower than this (mm) need no sample between their ends.</summary>
    private const double NarrowBand = 0.2;

    /// <summary>Golden section gains a factor 1.6 each: from a sample's neighbours to the resolution.</summary>
    private const int MostRefinements = 10;

    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    public static WorstCoverage Find(SearchRange range, CoverageBuilder build, InsetRule rule, bool traceUnseen = true)
    {
        var search = new Search(build);
        var thicknesses = Thicknesses(range);
        var open = Screen(range, search, rule, thicknesses);
        if (search.HasFailed) return search.Result(traceUnseen);
        if (open.AsStated.Count > 0) Follow(range, search, open, thicknesses);
        else if (search.IsSettledWhole) return search.Result(traceUnseen, new CoverageCase(range.FromThickness, range.Diameters[0]));
        foreach (var diameter in range.Diameters)
        {
            search.Compute(new CoverageCase(range.FromThickness, diameter));
            if (range.ToThickness > range.FromThickness) search.Compute(new CoverageCase(range.ToThickness, diameter));
        }

        return search.Result(traceUnseen);
    }

    /// <summary>Incomplete before complete, then the smaller volume.</summary>
    public static bool IsWorse(CoverageResult one, CoverageResult other) =>
        Search.IsWorse(new VolumeSeen(one.Volume, one.IsComplete), new VolumeSeen(other.Volume, other.IsComplete));

    /// <summary>The cases, errors of offset left out, that are not whole whatever these are; the worst first.</summary>
    private static Open Screen(SearchRange range, Search search, InsetRule rule, double[] thicknesses)
    {
        var open = new List<(CoverageCase Place, VolumeSeen Seen, double Least)>();
        var errors = range.SharedCorners().ToArray();
        foreach (var diameter in range.Diameters)
        {
            foreach (var thickness in thicknesses)
            {
                foreach (var error in errors)
                {
                    var place = error.On(new CoverageCase(thickness, diameter));

                    // Beams that come over a step do not move as one.
                    var least = rule.MovesAsOne && place.Misalignment == 0 ? search.LeastWithin(place, range.OffsetTolerance) : null;
                    if (least is { IsComplete: true }) continue;
                    var seen = search.Look(place);
                    if (search.HasFailed) return new Open([], []);
                    open.Add((place, seen, least?.Volume.Percent ?? 0));
                }
            }
        }

        // As they stand many are whole, and alike: then the least that errors of offset can leave tells more.
        return new Open(
            [.. open.OrderBy(one => one.Seen, Search.WorstFirst).Select(one => one.Place)], [.. open.OrderBy(one => one.Least).Select(one => one.Place)]);
    }

    private static void Follow(SearchRange range, Search search, Open open, double[] thicknesses)
    {
        var corners = range.Corners().ToArray();
        foreach (var place in Spread(open.AsStated).Concat(Spread(open.AtLeast)).Distinct())
        {
            foreach (var (left, right) in corners) search.Look(place with { LeftError = left, RightError = right });
        }

        // While all is complete the verdict hangs on it: then more of what is not settled is looked at, until something is not.
        foreach (var place in open.AtLeast.Take(Doubted))
        {
            if (!search.IsComplete) break;
            foreach (var (left, right) in corners) search.Look(place with { LeftError = left, RightError = right });
        }

        var worst = search.Worst;
        foreach (var error in range.SharedErrors()) search.Look(error.On(worst));
        worst = search.Worst;
        foreach (var thickness in thicknesses) search.Look(worst with { Thickness = thickness });
        Refine(search, thicknesses);
        worst = search.Worst;
        foreach (var (left, right) in range.Middles()) search.Look(worst with { LeftError = left, RightError = right });
        foreach (var diameter in range.MiddleDiameters()) search.Look(search.Worst with { OutsideDiameter = diameter });
        search.ComputeWorst(Finalists);
    }

    /// <summary>The worst ones, no more than one of each thickness and diameter first: neighbours in error tell the same again.</summary>
    private static IEnumerable<CoverageCase> Spread(List<CoverageCase> open) =>
        open.DistinctBy(place => (place.Thickness, place.OutsideDiameter)).Take(Followed / 2).Concat(open.Take(Followed)).Distinct().Take(Followed);

    private static double[] Thicknesses(SearchRange range)
    {
        var (from, to) = (range.FromThickness, range.ToThickness);
        if (!(to > from)) return [from];
        if (to - from < NarrowBand) return [from, to];
        var steps = Math.Clamp((int)Math.Ceiling(Math.Log(to / from) / Math.Log(ThicknessRatio)), 2, MostThicknesses - 1);
        var samples = new double[steps + 1];
        for (var index = 0; index < samples.Length; index++) samples[index] = from * Math.Pow(to / from, (double)index / steps);
        samples[^1] = to;
        return samples;
    }

    private static void Refine(Search search, double[] thicknesses)
    {
        var place = search.Worst;
        var at = Array.IndexOf(thicknesses, place.Thickness);
        if (at < 0 || thicknesses.Length == 1 || search.IsWhole) return;
        var low = thicknesses[Math.Max(0, at - 1)];
        var high = thicknesses[Math.Min(thicknesses.Length - 1, at + 1)];
        var (lower, upper) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
        var atLower = search.Look(place with { Thickness = lower });
        var atUpper = search.Look(place with { Thickness = upper });
        for (var step = 0; step < MostRefinements && high - low > ThicknessResolution; step++)
        {
            if (Search.IsWorse(atLower, atUpper))
            {
                (high, upper, atUpper) = (upper, lower, atLower);
                lower = high - (Golden * (high - low));
                atLower = search.Look(place with { Thickness = lower });
            }
            else
            {
                (low, lower, atLower) = (lower, upper, atUpper);
                upper = low + (Golden * (high - low));
                atUpper = search.Look(place with { Thickness = upper });
            }
        }
    }

    /// <summary>What is not settled by the first look, the worst first: by what is seen at the stated offsets, and by the least that errors can leave of it.</summary>
    private sealed record Open(List<CoverageCase> AsStated, List<CoverageCase> AtLeast);

    private sealed class Search(CoverageBuilder build)
    {
        public static readonly IComparer<VolumeSeen> WorstFirst =
            Comparer<VolumeSeen>.Create((one, other) => IsWorse(one, other) ? -1 : IsWorse(other, one) ? 1 : 0);

        private readonly Dictionary<CoverageCase, VolumeSeen> looked = [];
        private readonly List<CoverageCase> order = [];
        private readonly Dictionary<CoverageCase, VolumeSeen> computed = [];
        private VolumeSeen? worstLooked;
        private (CoverageCase Place, VolumeSeen Seen)? worstComputed;
        private CoverageCase? failed;

        /// <summary>The worst of those looked at.</summary>
        public CoverageCase Worst { get; private set; }

        /// <summary>Nothing at all went unseen in any case that was settled: no figure can be lower than another.</summary>
        public bool IsSettledWhole { get; private set; } = true;

        public bool HasFailed => failed is not null;

        /// <summary>Nothing at all is unseen anywhere yet: there is no dip to follow.</summary>
        public bool IsWhole => worstLooked is null or { IsComplete: true, Volume.Percent: 100 };

        public bool IsComplete => worstLooked is null or { IsComplete: true };

        /// <summary>Incomplete before complete, then the smaller volume. Of equals, the one looked at first stays.</summary>
        public static bool IsWorse(VolumeSeen one, VolumeSeen other) =>
            one.IsComplete != other.IsComplete ? !one.IsComplete : one.Volume.Percent < other.Volume.Percent;

        /// <summary>A lower bound for every error of offset; null where it cannot be built.</summary>
        public VolumeSeen? LeastWithin(CoverageCase place, double tolerance)
        {
            var least = build(place) is { } input ? CoverageKernel.Volume(Screened(InsetRule.DrawnIn(input, tolerance))) : null;
            IsSettledWhole &= least is { IsComplete: true, Volume.Percent: 100 };
            return least;
        }

        /// <summary>By screening rows.</summary>
        public VolumeSeen Look(CoverageCase place)
        {
            if (looked.TryGetValue(place, out var known)) return known;
            var seen = Take(place, isScreening: true);
            looked.Add(place, seen);
            order.Add(place);
            if (failed is null && (worstLooked is not { } before || IsWorse(seen, before))) (worstLooked, Worst) = (seen, place);
            return seen;
        }

        /// <summary>By all rows.</summary>
        public void Compute(CoverageCase place)
        {
            if (computed.ContainsKey(place)) return;
            var seen = Take(place, isScreening: false);
            computed.Add(place, seen);
            if (worstComputed is not { } before || IsWorse(seen, before.Seen)) worstComputed = (place, seen);
        }

        public void ComputeWorst(int count)
        {
            foreach (var place in order.OrderBy(one => looked[one], WorstFirst).Take(count)) Compute(place);
        }

        /// <summary>One case that cannot be computed leaves the worst case unknown: it must not pass for a good one.</summary>
        public WorstCoverage Result(bool traceUnseen, CoverageCase? any = null)
        {
            var place = failed ?? any ?? worstComputed!.Value.Place;
            var input = build(place);
            var result = input is not null
                ? CoverageKernel.Compute(input, traceUnseen && failed is null)
                : new CoverageResult(
                    new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), [], default, default,
                    IsComplete: false, "The section could not be built.");
            return new WorstCoverage(
                result, new Length(place.Thickness), place.OutsideDiameter is { } diameter ? new Length(diameter) : null,
                new Length(place.LeftError), new Length(place.RightError), result.NotComputed)
            {
                SkewError = Angle.FromRadians(place.SkewError), PartSpeedError = new Share(100 * place.Speeds.Part),
                WedgeSpeedError = new Share(100 * place.Speeds.Wedge), Misalignment = new Length(place.Misalignment),
            };
        }

        private VolumeSeen Take(CoverageCase place, bool isScreening)
        {
            if (build(place) is { } input && CoverageKernel.Volume(isScreening ? Screened(input) : input) is { } seen) return seen;
            failed ??= place;
            return new VolumeSeen(new Share(100), IsComplete: true);
        }

        private static CoverageInput Screened(CoverageInput input) => input with
        {
            RowStep = Math.Max(input.RowStep, ScreeningStep),
        };
    }
}
