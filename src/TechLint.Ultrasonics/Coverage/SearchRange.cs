using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>One place in the range that an examination claims. mm and rad.</summary>
/// <param name="Thickness">Wall.</param>
/// <param name="OutsideDiameter">Null where the surface counts as flat.</param>
/// <param name="LeftError">How far the probes on the left stand farther from the weld than stated. Passes that hold their place better than the
/// worst one clamp it to their own tolerance.</param>
/// <param name="RightError">Likewise on the right.</param>
/// <param name="SkewError">Turn beside the stated skew, all probes alike.</param>
internal readonly record struct CoverageCase(
    double Thickness, double? OutsideDiameter, double LeftError = 0, double RightError = 0, double SkewError = 0)
{
    /// <summary>Hi-lo: how much deeper the right edge lies than the left one, mm, either way up to what the preparation allows.</summary>
    public double Misalignment { get; init; }

    /// <summary>How the true speeds stand against those that the laws were worked out for.</summary>
    public SpeedErrors Speeds { get; init; }
}

/// <summary>True speed over the stated one, less 1.</summary>
internal readonly record struct SpeedErrors(double Part, double Wedge)
{
    public bool IsNone => Part == 0 && Wedge == 0;
}

/// <summary>The range to search: a band of thickness, the diameters that stand for theirs, and how well the frame holds its place.</summary>
/// <param name="FromThickness">mm.</param>
/// <param name="ToThickness">mm.</param>
/// <param name="Diameters">At least one; null is flat.</param>
/// <param name="OffsetTolerance">mm, either way, left and right independently.</param>
/// <param name="SkewTolerance">rad, either way.</param>
/// <param name="HasLeft">Some probe stands on the left.</param>
/// <param name="HasRight">Some probe stands on the right.</param>
internal sealed record SearchRange(
    double FromThickness, double ToThickness, ImmutableArray<double?> Diameters, double OffsetTolerance, double SkewTolerance,
    bool HasLeft, bool HasRight)
{
    /// <summary>True speed in the part against the stated one: share, either way; 0 where the stated ones are taken as true.</summary>
    public double PartSpeedTolerance { get; init; }

    /// <summary>Share, either way; independent of the part's.</summary>
    public double WedgeSpeedTolerance { get; init; }

    /// <summary>Hi-lo, mm, either way; 0 where the edges are taken to meet.</summary>
    public double Misalignment { get; init; }

    /// <summary>No probe and no beam is skewed: a turn one way sees what a turn the other way does.</summary>
    public bool IsSkewEven { get; init; }

    /// <summary>What a verdict searches: range and positioning tolerance.</summary>
    public static SearchRange Of(Examination examination) => new(
        examination.Thickness.From?.Millimetres ?? double.NaN, examination.Thickness.To?.Millimetres ?? double.NaN,
        DiametersOf(examination),
        examination.Passes.Max(pass => pass.Tolerance.IndexOffset.Millimetres),
        examination.Passes.Max(pass => pass.Tolerance.Skew.Radians),
        examination.Passes.Any(pass => pass.Probes.Any(probe => probe.Side == Side.Left)),
        examination.Passes.Any(pass => pass.Probes.Any(probe => probe.Side == Side.Right)))
    {
        IsSkewEven = examination.Passes.All(pass =>
            pass.Probes.All(probe => probe.Skew.Degrees == 0) && pass.Beams.All(beam => beam.Skew.Degrees == 0)),
    };

    /// <summary>Also what the references and their checks are there to catch: speeds of sound that drift, and edges that do not meet.</summary>
    public static SearchRange WithDrifts(Examination examination, SpeedErrors speeds) => Of(examination) with
    {
        PartSpeedTolerance = Math.Abs(speeds.Part), WedgeSpeedTolerance = Math.Abs(speeds.Wedge),
        Misalignment = Math.Abs(examination.Weld.Preparation.Misalignment.Millimetres),
    };

    /// <summary>
    /// Both ends; an open upper end is the flat limit. Along a girth weld the section is flat at any diameter, and the
    /// smallest one, where a sole fits worst, stands for all.
    /// </summary>
    private static ImmutableArray<double?> DiametersOf(Examination examination)
    {
        if (examination.Part.Curvature == Curvature.Flat || examination.OutsideDiameter is not { From: { } from } band) return [null];
        if (examination.Part.Curvature == Curvature.AlongWeld) return [from.Millimetres];
        if (band.To is not { } to) return [from.Millimetres, null];
        return to > from ? [from.Millimetres, to.Millimetres] : [from.Millimetres];
    }

    /// <summary>Something other than place and size may err.</summary>
    public bool HasDrifts => PartSpeedTolerance > 0 || WedgeSpeedTolerance > 0 || Misalignment > 0;

    /// <summary>Skew, speeds and hi-lo at their middles and ends, in every combination, the stated ones first.</summary>
    public IEnumerable<SharedError> SharedErrors()
    {
        foreach (var misalignment in MiddleAndEnds(Misalignment))
        {
            foreach (var part in MiddleAndEnds(PartSpeedTolerance))
            {
                foreach (var wedge in MiddleAndEnds(WedgeSpeedTolerance))
                {
                    foreach (var skew in Skews()) yield return new SharedError(skew, new SpeedErrors(part, wedge), misalignment);
                }
            }
        }
    }

    /// <summary>The stated speeds and edges that meet, and beside them the corners alone.</summary>
    public IEnumerable<SharedError> SharedCorners() => SharedErrors().Where(error => (error.Speeds.IsNone && error.Misalignment == 0)
        || (error.Speeds.Part != 0 == PartSpeedTolerance > 0 && error.Speeds.Wedge != 0 == WedgeSpeedTolerance > 0 && error.Misalignment != 0 == Misalignment > 0));

    private double[] Skews() => IsSkewEven && SkewTolerance > 0 ? [0, SkewTolerance] : MiddleAndEnds(SkewTolerance);

    private static double[] MiddleAndEnds(double tolerance) => tolerance > 0 ? [0, tolerance, -tolerance] : [0];

    /// <summary>Corners of the positioning tolerance, the stated place left out; none where there is no tolerance.</summary>
    public IEnumerable<(double Left, double Right)> Corners()
    {
        if (!(OffsetTolerance > 0)) yield break;
        double[] lefts = HasLeft ? [-OffsetTolerance, OffsetTolerance] : [0];
        double[] rights = HasRight ? [-OffsetTolerance, OffsetTolerance] : [0];
        foreach (var left in lefts)
        {
            foreach (var right in rights)
            {
                if (left != 0 || right != 0) yield return (left, right);
            }
        }
    }

    /// <summary>One side off its corner and the other on it, or both in the middle: where a dip lies within the tolerance and not at its corners.</summary>
    public IEnumerable<(double Left, double Right)> Middles()
    {
        if (!(OffsetTolerance > 0)) yield break;
        double[] lefts = HasLeft ? [-OffsetTolerance, -OffsetTolerance / 2, 0, OffsetTolerance / 2, OffsetTolerance] : [0];
        double[] rights = HasRight ? [-OffsetTolerance, -OffsetTolerance / 2, 0, OffsetTolerance / 2, OffsetTolerance] : [0];
        foreach (var left in lefts)
        {
            foreach (var right in rights) yield return (left, right);
        }
    }

    /// <summary>Between two ends, where the curvature lies half-way between theirs.</summary>
    public IEnumerable<double?> MiddleDiameters()
    {
        if (Diameters.Length != 2 || Diameters[0] is not { } from) yield break;
        yield return 2 / ((1 / from) + (Diameters[1] is { } to ? 1 / to : 0));
    }
}

/// <summary>Errors that all probes share.</summary>
internal readonly record struct SharedError(double Skew, SpeedErrors Speeds, double Misalignment)
{
    public CoverageCase On(CoverageCase place) => place with { SkewError = Skew, Speeds = Speeds, Misalignment = Misalignment };
}
