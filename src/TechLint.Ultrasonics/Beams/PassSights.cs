using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tandem;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Ultrasonics.Beams;

/// <summary>What of a pass counts for coverage point by point or law by law: the laws of its sound beams, and its diffraction and tandem pairs. Its images
/// are <see cref="ImageWork"/>'s. Coupling monitors and lamination scans never count.</summary>
internal sealed record PassSights(ImmutableArray<SightLine> Lines, ImmutableArray<IPointSight> Pairs)
{
    /// <param name="section">The pass at one case.</param>
    /// <param name="leftError">mm; moves the left probes away from the weld where positive.</param>
    /// <param name="rightError">mm; moves the right probes away from the weld where positive.</param>
    /// <param name="skewError">rad; turns every probe.</param>
    public static PassSights Of(PassSection section, double leftError = 0, double rightError = 0, double skewError = 0)
    {
        var laws = LinesOf(section, skewError);
        var lines = ImmutableArray.CreateBuilder<SightLine>(laws.Length);
        foreach (var (probe, line) in laws)
        {
            var error = probe.Side == Side.Left ? leftError : rightError;
            lines.Add(error == 0 ? line : line with { ExitY = line.ExitY + Outward(probe.Side, error) });
        }

        return new PassSights(lines.MoveToImmutable(), PairsOf(section, leftError, rightError, skewError));
    }

    /// <summary>The diffraction and tandem pairs that can be worked out.</summary>
    public static ImmutableArray<IPointSight> PairsOf(PassSection section, double leftError, double rightError, double skewError)
    {
        var pairs = ImmutableArray.CreateBuilder<IPointSight>();
        foreach (var beam in section.Pass.Beams)
        {
            if (beam.Scan == ScanKind.Tofd && TofdPair.Of(section, beam, leftError, rightError).Pair is { } pair) pairs.Add(pair.Sight);
            if (beam.Scan == ScanKind.Tandem && TandemPair.Of(section, beam, leftError, rightError, skewError).Pair is { } tandem) pairs.Add(tandem.Sight);
        }

        return pairs.ToImmutable();
    }

    /// <summary>A distance away from the weld as a step along y.</summary>
    public static double Outward(Side side, double distance) => side == Side.Left ? -distance : distance;

    /// <summary>The laws of the sound beams that exist, at their stated places.</summary>
    public static ImmutableArray<(MountedProbe Probe, SightLine Line)> LinesOf(PassSection section, double skewError)
    {
        var lines = ImmutableArray.CreateBuilder<(MountedProbe, SightLine)>();
        foreach (var beam in section.Pass.Beams)
        {
            if (beam.Scan is not (ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed) || Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) continue;
            foreach (var law in LawGeometry.Of(section, probe, beam, skewError))
            {
                if (law.Sight is { } sight) lines.Add((probe, sight));
            }
        }

        return lines.ToImmutable();
    }

    /// <summary>The laws of one sound beam that exist, by their stated angle in deg.</summary>
    public static IEnumerable<(double Angle, SightLine Line)> LinesOf(PassSection section, string beamId)
    {
        foreach (var beam in section.Pass.Beams)
        {
            if (!string.Equals(beam.Id, beamId, StringComparison.Ordinal) || Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) continue;
            foreach (var law in LawGeometry.Of(section, probe, beam))
            {
                if (law.Sight is { } sight) yield return (law.Study.Angle.Degrees, sight);
            }
        }
    }
}
