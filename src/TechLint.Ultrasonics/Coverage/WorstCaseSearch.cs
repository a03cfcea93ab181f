using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>Builds the section of one case; null where it cannot be built.</summary>
internal delegate CoverageInput? CoverageBuilder(CoverageCase place);

/// <summary>The least coverage over thickness, diameter and positioning tolerance, and where it is.</summary>
/// <remarks>
/// A search, not a proof. Looked at are: the stated places at both ends of thickness and at up to three thicknesses between them, at every
/// diameter of the range; the corners of the index offset's tolerance at the worst of these and at both ends of thickness; the skew's
/// tolerance, both ways, at the worst of all; every thickness again with the worst errors; and the neighbourhood of the worst
/// thickness by golden section down to <see cref="ThicknessResolution"/>. That is about 30 sections for a wide band with tolerance, 5 a
/// diameter without. A dip of coverage narrower than the thickness samples, or one that only errors inside the tolerance show, would be missed.
/// </remarks>
internal static class WorstCaseSearch
{
    /// <summary>The worst thickness is known to this, mm.</summary>
    public const double ThicknessResolution = 0.1;

    private const int InnerSamples = 3;

    /// <summary>Bands narrower than this (mm) have one sample between their ends.</summary>
    private const double NarrowBand = 2;

    /// <summary>Golden section gains a factor 1.6 each: from 25 mm to the resolution.</summary>
    private const int MostRefinements = 12;

    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    public static WorstCoverage Find(SearchRange range, CoverageBuilder build, bool traceUnseen = true)
    {
        var search = new Search(build);
        var thicknesses = Thicknesses(range);
        foreach (var diameter in range.Diameters)
        {
            foreach (var thickness in thicknesses) search.Look(new CoverageCase(thickness, diameter));
        }

        var nominal = search.Worst;
        foreach (var thickness in new[] { nominal.Thickness, range.FromThickness, range.ToThickness }.Distinct())
        {
            foreach (var (left, right) in range.Corners())
                search.Look(new CoverageCase(thickness, nominal.OutsideDiameter, left, right));
        }

        if (range.SkewTolerance > 0)
        {
            var worst = search.Worst;
            search.Look(worst with { SkewError = range.SkewTolerance });
            search.Look(worst with { SkewError = -range.SkewTolerance });
        }

        var errors = search.Worst;
        foreach (var thickness in thicknesses) search.Look(errors with { Thickness = thickness });
        if (!search.IsWhole) Refine(search, thicknesses);
        return search.Result(traceUnseen);
    }

    private static double[] Thicknesses(SearchRange range)
    {
        var (from, to) = (range.FromThickness, range.ToThickness);
        if (!(to > from)) return [from];
        var inner = to - from < NarrowBand ? 1 : InnerSamples;
        var samples = new double[inner + 2];
        for (var index = 0; index < samples.Length; index++) samples[index] = from + (index * (to - from) / (samples.Length - 1));
        samples[^1] = to;
        return samples;
    }

    private static void Refine(Search search, double[] thicknesses)
    {
        var place = search.Worst;
        var at = Array.IndexOf(thicknesses, place.Thickness);
        if (at < 0 || thicknesses.Length == 1) return;
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

    private sealed class Search(CoverageBuilder build)
    {
        private readonly Dictionary<CoverageCase, VolumeSeen> seen = [];
        private VolumeSeen? worst;
        private CoverageCase? failed;

        public CoverageCase Worst { get; private set; }

        /// <summary>Nothing at all is unseen anywhere yet: there is no dip to follow.</summary>
        public bool IsWhole => worst is null or { IsComplete: true, Volume.Percent: 100 };

        /// <summary>Incomplete before complete, then the smaller volume. Of equals, the one looked at first stays.</summary>
        public static bool IsWorse(VolumeSeen one, VolumeSeen other) =>
            one.IsComplete != other.IsComplete ? !one.IsComplete : one.Volume.Percent < other.Volume.Percent;

        public VolumeSeen Look(CoverageCase place)
        {
            if (seen.TryGetValue(place, out var known)) return known;
            if (build(place) is not { } input || CoverageKernel.Volume(input) is not { } volume)
            {
                failed ??= place;
                return seen[place] = new VolumeSeen(new Share(100), IsComplete: true);
            }

            seen.Add(place, volume);
            if (worst is not { } before || IsWorse(volume, before)) (worst, Worst) = (volume, place);
            return volume;
        }

        /// <summary>One case that cannot be computed leaves the worst case unknown: it must not pass for a good one.</summary>
        public WorstCoverage Result(bool traceUnseen)
        {
            var place = failed ?? Worst;
            var input = build(place);
            var result = input is not null
                ? CoverageKernel.Compute(input, traceUnseen && failed is null)
                : new CoverageResult(
                    new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), [], default, default,
                    IsComplete: false, "The section could not be built.");
            return new WorstCoverage(
                result, new Length(place.Thickness), place.OutsideDiameter is { } diameter ? new Length(diameter) : null,
                new Length(place.LeftError), new Length(place.RightError), result.NotComputed);
        }
    }
}
