using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>Builds an examination's section at one case after another, and keeps what they share. Not thread-safe: one search is one thread's.</summary>
internal sealed class SectionBuilder
{
    /// <summary>Rows lie at most a quarter of the shortest wavelength apart.</summary>
    private const double RowsPerWavelength = 4;

    /// <summary>Where no beam has a wavelength nothing is seen, and coarse rows (mm) say so as well.</summary>
    private const double RowStepWithoutBeams = 1;

    private readonly Examination examination;
    private readonly LawCache laws = new();
    private readonly ImageCache images = new();
    private readonly double rowStep;
    private readonly MirrorGap? cap;
    private readonly MirrorGap? root;
    private readonly bool fromInside;
    private (double Thickness, double? Diameter, VolumeRectangle Rectangle)? lastVolume;

    public SectionBuilder(Examination examination)
    {
        this.examination = examination;
        rowStep = RowStepOf(examination);
        cap = MirrorGap.Of(examination.Weld.Cap);
        root = MirrorGap.Of(examination.Weld.Root);
        fromInside = examination.Passes.All(pass => pass.ScanningSurface == Surface.Inside);
    }

    /// <summary>Whether the sound of a side moves as one body within the tolerance: one pass, or passes that all ride on one surface and hold their places
    /// alike, and no beam that points back over its own probe.</summary>
    public bool MovesAsOne => examination.Passes.All(pass =>
            pass.ScanningSurface == examination.Passes[0].ScanningSurface && pass.Tolerance.IndexOffset == examination.Passes[0].Tolerance.IndexOffset
            && pass.Beams.All(beam => !(beam.Angles is { } sweep && (sweep.From.Degrees < 0 || sweep.To.Degrees < 0))))
        && !HasFixedFocus;

    /// <summary>A focus on a vertical line stays where it is when its probe moves: the beam changes on the way.</summary>
    private bool HasFixedFocus => examination.Passes.Any(HoldsFocus);

    public CoverageInput? At(CoverageCase place) => At(place, null);

    /// <param name="place">Which case.</param>
    /// <param name="move">Probes that stand elsewhere than stated; null for none.</param>
    public CoverageInput? At(CoverageCase place, ProbeMove? move)
    {
        var passes = ImmutableArray.CreateBuilder<CoveragePass>(examination.Passes.Count);
        var diameter = place.OutsideDiameter is { } outside ? new Length(outside) : (Length?)null;
        double? curved = null;
        for (var index = 0; index < examination.Passes.Count; index++)
        {
            var pass = examination.Passes[index];
            if (PassSection.Of(examination, pass, new Length(place.Thickness), diameter) is not { } section) return null;
            if (section.Rays.IsCurved) curved = section.OutsideDiameter;
            passes.Add(PassAt(section, place, move is { } known && known.PassIndex == index ? known : null));
        }

        if (lastVolume is not { } last || last.Thickness != place.Thickness || last.Diameter != curved)
        {
            lastVolume = last = (place.Thickness, curved, VolumeRectangle.Of(examination.Weld, examination.Volume, place.Thickness, curved, fromInside));
        }

        return new CoverageInput(place.Thickness, curved, last.Rectangle, cap, root, passes.MoveToImmutable(), rowStep) { Misalignment = place.Misalignment };
    }

    private CoveragePass PassAt(PassSection section, CoverageCase place, ProbeMove? move)
    {
        var pass = section.Pass;
        var (tolerance, turn) = (pass.Tolerance.IndexOffset.Millimetres, pass.Tolerance.Skew.Radians);
        var (left, right) = (Within(place.LeftError, tolerance), Within(place.RightError, tolerance));
        var skew = Within(place.SkewError, turn);
        var moved = move is { } known && known.Shift != 0 ? Shifted(section, known, place) : null;
        var whole = moved is not null && HoldsFocus(pass) ? DriftedLaws.Of(moved, skew, place.Speeds) : laws.Of(section, skew, place.Speeds);
        var shifts = moved is null || HoldsFocus(pass) ? null : move!.Value.Stations;
        var lines = ImmutableArray.CreateBuilder<SightLine>(whole.Length);
        foreach (var (probe, line) in whole)
        {
            var error = probe.Side == Side.Left ? left : right;
            if (shifts is not null && shifts.Contains(probe.Station)) error += move!.Value.Shift;
            lines.Add(error == 0 ? line : line with { ExitY = line.ExitY + PassSights.Outward(probe.Side, error) });
        }

        var hasPairs = pass.Beams.Any(beam => beam.Scan is ScanKind.Tofd or ScanKind.Tandem);
        var held = moved ?? section;
        return new CoveragePass(pass.ScanningSurface, lines.MoveToImmutable(), [])
        {
            PairsWhenAsked = hasPairs ? new Lazy<ImmutableArray<IPointSight>>(() => PassSights.PairsOf(held, left, right, skew)) : null,
            Images = images.Of(held, left, right, skew),
        };
    }

    private PassSection? Shifted(PassSection section, ProbeMove move, CoverageCase place)
    {
        var probes = section.Pass.Probes.Select(probe => move.Stations.Contains(probe.Station)
            ? probe with { IndexOffset = new Length(probe.IndexOffset.Millimetres + move.Shift) }
            : probe);
        var pass = section.Pass with { Probes = [.. probes] };
        return PassSection.Of(
            examination, pass, new Length(place.Thickness), place.OutsideDiameter is { } outside ? new Length(outside) : null);
    }

    private static bool HoldsFocus(Pass pass) => pass.Beams.Any(beam => beam.Focus.Kind == FocusKind.Across);

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
}

/// <summary>Probes of one pass that stand by <paramref name="Shift"/> mm farther from the weld than stated.</summary>
internal readonly record struct ProbeMove(int PassIndex, HashSet<int> Stations, double Shift);
