using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>How many places each range is cut into, both ends included; two are the ends alone.</summary>
internal sealed record Fineness(int Thicknesses, int Diameters, int Offsets, int Skews, int Speeds, int Misalignments)
{
    /// <summary>For every run of the tests.</summary>
    public static readonly Fineness Quick = new(13, 2, 3, 3, 1, 1);

    /// <summary>For the offline run whose results are kept.</summary>
    public static readonly Fineness Full = new(25, 3, 3, 3, 1, 1);

    /// <summary>Over drifts, for every run of the tests.</summary>
    public static readonly Fineness QuickOverDrifts = new(4, 2, 3, 2, 2, 2);

    /// <summary>Over drifts, offline.</summary>
    public static readonly Fineness FullOverDrifts = new(9, 2, 3, 2, 3, 3);
}

/// <summary>Every combination of finely cut ranges, each section computed for itself, and the worst of them: no screening, no short cut, no following.</summary>
internal static class WorstCaseBruteForce
{
    /// <returns>The worst share of the volume over all cases, whether every case was complete, and how many there were.</returns>
    public static (double Volume, bool IsComplete, int Cases, CoverageCase Worst) Of(
        Examination examination, SearchRange range, Fineness fineness)
    {
        var cases = Cases(range, fineness).ToArray();
        var seen = new VolumeSeen[cases.Length];
        var chunks = Environment.ProcessorCount;
        Parallel.For(0, chunks, chunk =>
        {
            var builder = new SectionBuilder(examination);
            for (var index = chunk; index < cases.Length; index += chunks)
            {
                seen[index] = CoverageKernel.Volume(builder.At(cases[index])!)
                    ?? throw new InvalidOperationException($"{cases[index]} is not computed.");
            }
        });
        var worst = Enumerable.Range(0, cases.Length).MinBy(index => seen[index].Volume.Percent);
        return (seen[worst].Volume.Percent, seen.All(one => one.IsComplete), cases.Length, cases[worst]);
    }

    private static IEnumerable<CoverageCase> Cases(SearchRange range, Fineness fineness)
    {
        foreach (var thickness in Cut(range.FromThickness, range.ToThickness, fineness.Thicknesses))
        {
            foreach (var diameter in DiametersOf(range, fineness.Diameters))
            {
                foreach (var skew in Cut(-range.SkewTolerance, range.SkewTolerance, fineness.Skews).Where(skew => skew >= 0 || !range.IsSkewEven))
                {
                    foreach (var error in Shared(range, skew, fineness))
                    {
                        foreach (var left in range.HasLeft ? Cut(-range.OffsetTolerance, range.OffsetTolerance, fineness.Offsets) : [0])
                        {
                            foreach (var right in range.HasRight ? Cut(-range.OffsetTolerance, range.OffsetTolerance, fineness.Offsets) : [0])
                            {
                                yield return error.On(new CoverageCase(thickness, diameter, left, right));
                            }
                        }
                    }
                }
            }
        }
    }

    private static IEnumerable<SharedError> Shared(SearchRange range, double skew, Fineness fineness)
    {
        foreach (var part in Cut(-range.PartSpeedTolerance, range.PartSpeedTolerance, fineness.Speeds))
        {
            foreach (var wedge in Cut(-range.WedgeSpeedTolerance, range.WedgeSpeedTolerance, fineness.Speeds))
            {
                foreach (var misalignment in Cut(-range.Misalignment, range.Misalignment, fineness.Misalignments))
                {
                    yield return new SharedError(skew, new SpeedErrors(part, wedge), misalignment);
                }
            }
        }
    }

    private static IEnumerable<double?> DiametersOf(SearchRange range, int count)
    {
        if (range.Diameters.Length < 2) return range.Diameters;
        var (from, to) = (1 / range.Diameters[0]!.Value, range.Diameters[1] is { } known ? 1 / known : 0);
        return Cut(from, to, count).Select(curvature => curvature > 0 ? 1 / curvature : (double?)null);
    }

    private static IEnumerable<double> Cut(double from, double to, int count) =>
        to == from ? [from] : Enumerable.Range(0, count).Select(index => from + ((to - from) * index / (count - 1)));
}
