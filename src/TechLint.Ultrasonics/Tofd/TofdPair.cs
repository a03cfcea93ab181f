using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
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
    /// <summary>A place this near the mid-plane (mm) lies on it but for rounding.</summary>
    private const double OnTheMiddle = 1e-9;

    /// <summary>Depths at which the error is looked at; about <c>d x²/2(S² + d²)</c> when flat, greatest near depth S, where it is level.</summary>
    private const int ErrorSamples = 32;

    private readonly PairGeometry pair;
    private readonly MidPlaneDepths midPlane;
    private readonly double meanSpeed;
    private readonly double pulseSeconds;
    private readonly double clearPath;

    private TofdPair(
        PairGeometry pair, TofdStudy study, TofdSight sight, Duration? recordedTime, MidPlaneDepths depths, double speed, double pulse, double firstClear)
    {
        midPlane = depths;
        meanSpeed = speed;
        pulseSeconds = pulse;
        clearPath = firstClear;
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

        var depths = new MidPlaneDepths(
            pair, new MidPlaneLevel(pair, transmit, receive), wall, intersection, nearDead, backDead, earliest, latest);
        var (from, to) = depths.Covered(section.Examination.TofdDrop.Decibels);
        var least = depths.LeastLevel(section.Examination.TofdDrop.Decibels);

        var (zoneFrom, zoneTo) = (beam.ZoneFrom.At(wall), beam.ZoneTo.At(wall));
        var study = new TofdStudy(
            new Length(pair.Separation), new Length(intersection), Duration.FromSeconds(pair.LateralPath / speed),
            Duration.FromSeconds(pair.BackWallPath / speed), new Length(nearDead), new Length(backDead), new Length(from),
            new Length(to));
        return new TofdPair(
            pair, study, new TofdSight(pair, transmit, receive, earliest, latest, least, zoneFrom, zoneTo),
            beam.TimeWindow is null ? null : Duration.FromSeconds(Math.Max(0, recordedTo - recordedFrom) / speed), depths, speed, pulse, firstClear);
    }

    /// <summary>What is shown beside the pair's chief figures; worked out only where a study is.</summary>
    public TofdDetail DetailOf(PassSection section, Beam beam)
    {
        var way = meanSpeed * pulseSeconds;
        var wall = section.Thickness;
        var (six, twelve, twenty) = (midPlane.Covered(-6), midPlane.Covered(-12), midPlane.Covered(-20));
        var (longitudinal, transverse) = (MeanSpeed(section, Wave.Longitudinal), MeanSpeed(section, Wave.Transverse));
        var stated = beam.StatedSeparation;
        var (from, to) = (Study.CoveredFrom.Millimetres, Study.CoveredTo.Millimetres);
        var (zoned, zonedTo) = (Math.Max(from, Sight.FromZ), Math.Min(to, Sight.ToZ));
        return new TofdDetail(
            new Length(pair.MiddleY),
            longitudinal is { } fast && transverse is { } slow ? ConvertedBackWallTime(fast, slow) : null,
            transverse is { } both ? Duration.FromSeconds(pair.BackWallPath / both) : null,
            new Length(wall - Math.Max(0, pair.DepthOf(Math.Max(pair.BackWallPath - way, pair.Separation)))),
            stated, stated is { } length ? new Length(length.Millimetres - pair.Separation) : null,
            Stretch(six), Stretch(twelve), Stretch(twenty), Stretch((zoned, Math.Max(zoned, zonedTo))),
            DeadZonesBeside(section), Resolution(from, way), Resolution(to, way), new Length(DepthErrorAt(0, from, to)));

        static CoveredDepth Stretch((double From, double To) depth) => new(new Length(depth.From), new Length(depth.To));
    }

    /// <summary>How far too deep a tip at y is read at most, over a stretch of its depth; NaN where y does not lie between the probes.</summary>
    private double DepthErrorAt(double y, double from, double to)
    {
        if (!(y > pair.LeftExitY && y < pair.RightExitY)) return double.NaN;
        if (Math.Abs(y - pair.MiddleY) < OnTheMiddle) return 0;
        var frame = new SectionFrame(pair.Section);
        var worst = double.NaN;
        for (var sample = 0; sample <= ErrorSamples; sample++)
        {
            var depth = from + ((to - from) * sample / ErrorSamples);
            var error = pair.DepthOf(OffCentreSight.PathOf(frame, pair, y, depth)) - depth;
            if (!(Math.Abs(error) <= Math.Abs(worst))) worst = error;
        }

        return worst;
    }

    private Length Resolution(double depth, double way) => new(pair.DepthOf(pair.PathAt(depth) + way) - depth);

    /// <summary>At both toes and both edges of the examined volume, from left to right in the pass's own frame.</summary>
    private EquatableArray<OffCentreDeadZone> DeadZonesBeside(PassSection section)
    {
        var curved = section.Rays.IsCurved ? section.OutsideDiameter : null;
        var examination = section.Examination;
        var edges = VolumeRectangle.Of(examination.Weld, examination.Volume, section.Thickness, curved, section.IsInside);
        var toes = VolumeRectangle.Of(
            examination.Weld, examination.Volume with { BesideWeld = default }, section.Thickness, curved, section.IsInside);
        var frame = new PassFrame(section.Thickness, curved, section.Pass.ScanningSurface);
        double[] places = [edges.FromY / frame.ToOuter, toes.FromY / frame.ToOuter, toes.ToY / frame.ToOuter, edges.ToY / frame.ToOuter];
        Array.Sort(places);
        return
        [
            .. places.Distinct().Select(y => new OffCentreDeadZone(
                new Length(y), new Length(OffCentreSight.DepthOf(pair, y, clearPath)),
                new Length(section.Thickness - OffCentreSight.DepthOf(pair, y, pair.PathAt(section.Thickness - Study.BackWallDeadZone.Millimetres))))),
        ];
    }

    /// <summary>Of both sides: times are paths divided by it.</summary>
    private static double? MeanSpeed(PassSection section, Wave wave)
    {
        var (left, right) = (Of(section.SpeedsOn(Side.Left)), Of(section.SpeedsOn(Side.Right)));
        return left > 0 && right > 0 ? 2 / ((1 / left.Value) + (1 / right.Value)) : null;

        double? Of(SoundSpeeds speeds) => (wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal)?.MillimetresPerSecond;
    }

    /// <summary>First arrival of the back wall's echo that is transverse on its way up (or down), by least time along the wall; both waves' speeds in mm/s.</summary>
    /// <returns>Null where no such way clears the bore.</returns>
    public Duration? ConvertedBackWallTime(double longitudinal, double transverse) =>
        ConvertedWave.BackWallTime(pair, longitudinal, transverse) is var time && double.IsFinite(time) ? Duration.FromSeconds(time) : null;

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
