using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Ultrasonics.Beams;

/// <summary>What of a pass counts for coverage: the laws of its sound beams and its diffraction pairs. Coupling monitors and
/// lamination scans never count; tandem and total focusing are not computed.</summary>
internal sealed record PassSights(ImmutableArray<SightLine> Lines, ImmutableArray<TofdSight> Pairs)
{
    /// <param name="section">The pass at one case.</param>
    /// <param name="leftError">mm; moves the left probes away from the weld where positive.</param>
    /// <param name="rightError">mm; moves the right probes away from the weld where positive.</param>
    /// <param name="skewError">rad; turns every probe.</param>
    public static PassSights Of(PassSection section, double leftError = 0, double rightError = 0, double skewError = 0)
    {
        var lines = ImmutableArray.CreateBuilder<SightLine>();
        var pairs = ImmutableArray.CreateBuilder<TofdSight>();
        foreach (var beam in section.Pass.Beams)
        {
            switch (beam.Scan)
            {
                case ScanKind.Tofd:
                    if (TofdPair.Of(section, beam, leftError, rightError).Pair is { } pair) pairs.Add(pair.Sight);
                    break;
                case ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed:
                    if (Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) break;
                    var shift = probe.Side == Side.Left ? -leftError : rightError;
                    foreach (var law in LawGeometry.Of(section, probe, beam, skewError))
                    {
                        if (law.Sight is { } sight) lines.Add(sight with { ExitY = sight.ExitY + shift });
                    }

                    break;
            }
        }

        return new PassSights(lines.ToImmutable(), pairs.ToImmutable());
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
