using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// A diffraction pair in a section: times, dead zones, covered depth, sight. Lengths in mm, speeds in mm/s; times are paths divided
/// by the mean speed of both sides (equal but for welds between different metals), between the index points.
/// </summary>
/// <remarks>
/// Dead zones have the form of EN 583-6 (from memory): near surface <c>sqrt(c²tp²/4 + S c tp)</c>, back wall
/// <c>sqrt(c²(tw + tp)²/4 − S²) − W</c>, with the pulse length tp at -20 dB, S half the probe centre separation. On a convex surface
/// depth counts from the surface, so the chord's sagitta adds to what is unseen; from inside, straight lines reach no higher than
/// the tangents at the exit points, and the later of both counts.
/// </remarks>
internal sealed class TofdPair
{
    private readonly PairGeometry pair;

    private TofdPair(PairGeometry pair, TofdStudy study, TofdSight sight, Duration? recordedTime)
    {
        this.pair = pair;
        Study = study;
        Sight = sight;
        RecordedTime = recordedTime;
    }

    public TofdStudy Study { get; }

    public TofdSight Sight { get; }

    /// <summary>Recorded time: from before the lateral wave until after the back wall; null where no window is stated.</summary>
    public Duration? RecordedTime { get; }

    /// <summary>The pair at its stated places, or why there is none.</summary>
    public static (TofdPair? Pair, string? NotComputed) Of(PassSection section, Beam beam, double leftError = 0, double rightError = 0)
    {
        if (ProbeAt(section, beam.Transmit) is not { } sender || ProbeAt(section, beam.Receive) is not { } receiver)
        {
            return (null, "a probe of the pair is missing");
        }

        if (sender.Side == receiver.Side) return (null, "both probes of the pair stand on the same side of the weld");
        var sent = LawGeometry.Of(section, sender, beam);
        var received = LawGeometry.Of(section, receiver, beam);
        if (sent.IsEmpty || received.IsEmpty) return (null, "no angle is stated for an array of the pair");
        var fault = sent[0].Study.Fault != LawFault.None ? sent[0].Study.Fault : received[0].Study.Fault;
        if (fault != LawFault.None) return (null, LawFaultText.Of(fault));
        if (Pulse.LengthOf(sender.Transducer) is not { } sentPulse || Pulse.LengthOf(receiver.Transducer) is not { } receivedPulse)
        {
            return (null, "neither pulse length nor bandwidth is stated for a probe of the pair");
        }

        var fromLeft = sender.Side == Side.Left;
        var (left, right) = fromLeft ? (sent[0], received[0]) : (received[0], sent[0]);
        var geometry = new PairGeometry(
            section.Rays, left.Study.ExitY.Millimetres - leftError, right.Study.ExitY.Millimetres + rightError, fromLeft);
        if (!geometry.LateralWaveExists) return (null, "the line between the index points leaves the wall");
        var intersection = geometry.IntersectionDepth(left.Ray.PartAngle, right.Ray.PartAngle);
        var speed = 2 / ((1 / SpeedFor(section, sender, beam)) + (1 / SpeedFor(section, receiver, beam)));
        var pulse = Math.Max(sentPulse.Seconds, receivedPulse.Seconds);
        return (Build(
            section, beam, geometry, DirectivityOf(section, sender, beam, sent[0]), DirectivityOf(section, receiver, beam, received[0]), intersection,
            speed, pulse), null);
    }

    private static TofdPair Build(
        PassSection section, Beam beam, PairGeometry pair, Directivity transmit, Directivity receive, double intersection, double speed, double pulse)
    {
        var wall = section.Thickness;
        var firstClear = pair.LateralPath + (speed * pulse);
        var nearDead = Math.Clamp(Math.Max(pair.DepthOf(firstClear), HighestStraightDepth(pair)), 0, wall);
        var backDead = pair.DepthOf(pair.BackWallPath + (speed * pulse)) - wall;
        var recordedFrom = beam.TimeWindow is { } start ? pair.LateralPath - (speed * start.BeforeLateralWave.Seconds) : 0;
        var recordedTo = beam.TimeWindow is { } end ? pair.BackWallPath + (speed * end.AfterBackWall.Seconds) : double.PositiveInfinity;
        var earliest = Math.Max(firstClear, recordedFrom);
        var latest = Math.Min(pair.PathAt(Math.Max(wall - backDead, 0)), recordedTo);

        var level = new MidPlaneLevel(pair, transmit, receive);
        var (peak, peakDepth) = level.Loudest(wall, intersection);
        var least = peak * Math.Pow(10, section.Examination.TofdDrop.Decibels / 20);
        var from = Math.Max(Math.Max(nearDead, level.Edge(peakDepth, 0, least)), earliest <= pair.Separation ? 0 : pair.DepthOf(earliest));
        var to = Math.Min(Math.Min(wall - backDead, level.Edge(peakDepth, wall, least)), pair.DepthOf(latest));

        var (zoneFrom, zoneTo) = (beam.ZoneFrom.At(wall), beam.ZoneTo.At(wall));
        if (section.IsInside) (zoneFrom, zoneTo) = (wall - zoneTo, wall - zoneFrom);
        var study = new TofdStudy(
            new Length(pair.Separation), new Length(intersection), Duration.FromSeconds(pair.LateralPath / speed),
            Duration.FromSeconds(pair.BackWallPath / speed), new Length(nearDead), new Length(backDead), new Length(from),
            new Length(to > from ? to : from));
        return new TofdPair(
            pair, study, new TofdSight(pair, transmit, receive, earliest, latest, least, zoneFrom, zoneTo),
            beam.TimeWindow is null ? null : Duration.FromSeconds(Math.Max(0, recordedTo - recordedFrom) / speed));
    }

    /// <summary>First arrival of the back wall's echo that is transverse on its way up (or down), by least time along the wall; both waves' speeds in mm/s.</summary>
    public Duration ConvertedBackWallTime(double longitudinal, double transverse) =>
        Duration.FromSeconds(ConvertedWave.BackWallTime(pair, longitudinal, transverse));

    /// <summary>From inside, tangents at both exit points meet here on the mid-plane: no straight line from them reaches higher.</summary>
    private static double HighestStraightDepth(PairGeometry pair) => pair.Section.Bend >= 0
        ? 0
        : pair.Section.ScanRadius * ((1 / Math.Cos((pair.RightExitY - pair.LeftExitY) / (2 * pair.Section.ScanRadius))) - 1);

    private static Directivity DirectivityOf(PassSection section, MountedProbe probe, Beam beam, Law law)
    {
        var (wedge, part) = (probe.Wedge.Longitudinal!.Value.MillimetresPerSecond, SpeedFor(section, probe, beam));
        return new Directivity(
            law.Size, probe.Transducer.IsRound, wedge / probe.Transducer.Frequency.Hertz, wedge / part,
            Refraction.Through(law.Ray.PartAngle, part, wedge), law.Steering);
    }

    private static double SpeedFor(PassSection section, MountedProbe probe, Beam beam)
    {
        var speeds = section.SpeedsOn(probe.Side);
        return (beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal)!.Value.MillimetresPerSecond;
    }

    private static MountedProbe? ProbeAt(PassSection section, int? station)
    {
        foreach (var probe in section.Pass.Probes)
        {
            if (probe.Station == station) return probe;
        }

        return null;
    }
}
