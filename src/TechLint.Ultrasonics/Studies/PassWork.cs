using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Tandem;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Ultrasonics.Studies;

/// <summary>Works out one pass at one case, probes at their stated places.</summary>
internal static class PassWork
{
    public static PassStudy Of(PassSection section)
    {
        var pass = section.Pass;
        var beams = ImmutableArray.CreateBuilder<BeamStudy>(pass.Beams.Count);
        var pairTimes = new Dictionary<string, Duration?>(StringComparer.Ordinal);
        foreach (var beam in pass.Beams)
        {
            beams.Add(StudyOf(section, beam, out var recorded));
            if (beam.Scan == ScanKind.Tofd) pairTimes[beam.Id] = recorded;
        }

        var probes = ImmutableArray.CreateBuilder<ProbePlace>(pass.Probes.Count);
        foreach (var probe in pass.Probes) probes.Add(PlaceOf(section, probe));
        return new PassStudy(pass, probes.MoveToImmutable(), beams.ToImmutable(), Timing.Of(section, beams, pairTimes));
    }

    /// <summary>A pass whose wall is impossible: nothing is computed, and every beam says why.</summary>
    public static PassStudy Impossible(Pass pass)
    {
        var beams = ImmutableArray.CreateBuilder<BeamStudy>(pass.Beams.Count);
        foreach (var beam in pass.Beams) beams.Add(new BeamStudy(beam, null, [], null, ImpossibleWall));
        return new PassStudy(pass, [], beams.MoveToImmutable(), new AcquisitionStudy(null, null, null, null, null, null));
    }

    public const string ImpossibleWall = "thickness and diameter make no wall";

    private static BeamStudy StudyOf(PassSection section, Beam beam, out Duration? recorded)
    {
        recorded = null;
        var station = beam.From ?? beam.Transmit;
        if (Pulses.ProbeAt(section.Pass, station) is not { } probe) return new BeamStudy(beam, null, [], null, "the beam's probe is missing");
        var wavelength = WavelengthOf(section, probe, beam);
        switch (beam.Scan)
        {
            case ScanKind.Tofd:
                var (pair, reason) = TofdPair.Of(section, beam);
                recorded = pair?.RecordedTime;
                var halves = PairLaws(section, beam, probe);
                return new BeamStudy(beam, wavelength, halves, pair is null ? null : pair.Study with { Detail = pair.DetailOf(section, beam) }, reason);
            case ScanKind.TotalFocusing:
                var (image, whyNot) = ImageWork.StudyOf(section, beam);
                return new BeamStudy(beam, wavelength, [], null, whyNot) { Image = image };
            case ScanKind.Tandem:
                var (tandem, fault) = TandemPair.Of(section, beam);
                return new BeamStudy(beam, wavelength, PairLaws(section, beam, probe), null, fault) { Tandem = tandem?.Study };
            case ScanKind.CouplingMonitor when beam.Angles is null:
                return new BeamStudy(beam, wavelength, [], null, null);
        }

        var laws = LawGeometry.Of(section, probe, beam);
        return new BeamStudy(beam, wavelength, LawStudies.Of(section, probe, beam, laws), null, laws.IsEmpty ? "no angle is stated" : null)
        {
            Temperature = LawStudies.Drift(section, probe, beam, laws),
        };
    }

    private static ImmutableArray<LawStudy> PairLaws(PassSection section, Beam beam, MountedProbe transmitter)
    {
        var laws = LawStudies.Of(section, transmitter, beam, LawGeometry.Of(section, transmitter, beam));
        return Pulses.ProbeAt(section.Pass, beam.Receive) is { } receiver
            ? laws.AddRange(LawStudies.Of(section, receiver, beam, LawGeometry.Of(section, receiver, beam)))
            : laws;
    }

    private static Length? WavelengthOf(PassSection section, MountedProbe probe, Beam beam)
    {
        var speeds = section.SpeedsOn(probe.Side);
        var speed = beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal;
        return speed is { MetresPerSecond: > 0 } known && probe.Transducer.Frequency.Hertz > 0
            ? new Length(known.MillimetresPerSecond / probe.Transducer.Frequency.Hertz)
            : null;
    }

    private static ProbePlace PlaceOf(PassSection section, MountedProbe probe)
    {
        var outward = probe.Side == Side.Left ? -1 : 1;
        var contoured = probe.Wedge.ContourDiameter is not null && probe.Wedge.ContourDirection == ContourDirection.AlongBeam;

        // Speeds play no part in where the body stands.
        var sole = new Sole(probe.Wedge.Length.Millimetres, contoured, section.Rays, 1, 1);
        var front = outward * probe.IndexOffset.Millimetres;
        var back = front + (outward * 2 * sole.HalfArc * Math.Cos(probe.Skew.Radians));
        var diameter = section.ScanningDiameter is { } curved ? new Length(curved) : (Length?)null;
        return new ProbePlace(
            probe.Station, probe.Side, probe.IndexOffset, new Length(front), new Length(Math.Min(front, back)), new Length(Math.Max(front, back)),
            ContactGap.Of(section.Examination.Part.Curvature, diameter, probe.Wedge))
        {
            RockingAngle = Rocking.Of(section.Examination.Part.Curvature, diameter, section.IsInside, probe.Wedge),
        };
    }
}
