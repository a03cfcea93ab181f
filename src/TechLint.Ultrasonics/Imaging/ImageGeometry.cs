using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>
/// What a total-focusing image is made of at one case: the array's elements above the sole, the two ways through the part, the region. mm, mm/s, rad.
/// Forward is towards the weld.
/// </summary>
internal sealed class ImageGeometry
{
    private readonly double offset;
    private readonly double skewCosine;

    private ImageGeometry(PassSection section, MountedProbe probe, Beam beam, Sole sole, double offset, double skewCosine)
    {
        (Section, Probe, Beam, Sole, this.offset, this.skewCosine) = (section, probe, beam, sole, offset, skewCosine);
        Toward = probe.Side == Side.Left ? 1 : -1;
    }

    public PassSection Section { get; }

    public MountedProbe Probe { get; }

    public Beam Beam { get; }

    public Sole Sole { get; }

    /// <summary>+1 where the probe stands on the left and looks towards +y.</summary>
    public int Toward { get; }

    /// <summary>Centres, in the plane of incidence.</summary>
    public required (double U, double Height)[] Elements { get; init; }

    /// <summary>Of the array against the contact plane.</summary>
    public required double Slope { get; init; }

    public required double WedgeSpeed { get; init; }

    public required double Frequency { get; init; }

    /// <summary>Below this angle a transverse first leg does not count: a longitudinal wave goes along, as for a law. 0 for a longitudinal one.</summary>
    public required double TransmitCritical { get; init; }

    public required double ReceiveCritical { get; init; }

    public required Way Transmit { get; init; }

    public required Way Receive { get; init; }

    /// <summary>Both ways are the same waves in the same legs.</summary>
    public required bool IsOneWay { get; init; }

    /// <summary>Of the slowest wave on the way.</summary>
    public required double ShortestWavelength { get; init; }

    /// <summary>Within the wall; its ends rise.</summary>
    public required (double FromY, double ToY, double FromZ, double ToZ) Region { get; init; }

    /// <summary>Where something enters the part that leaves the sole at an arc from its centre: forward distance from the weld centreline.</summary>
    public double ForwardOf(double exitArc, double advance) => -(offset + ((Sole.HalfArc - exitArc) * skewCosine)) + (advance * skewCosine);

    /// <summary>Whether the sound meets no reinforcement at its mirrors.</summary>
    public bool IsMirrored(Way way, double angle, double exitArc)
    {
        for (var bounce = 1; bounce <= way.Bounces; bounce++)
        {
            if (Section.IsOnReinforcement(Toward * ForwardOf(exitArc, way.AdvanceToBounce(angle, bounce)), bounce)) return false;
        }

        return true;
    }

    /// <summary>The image at a case, or why there is none.</summary>
    /// <param name="section">The case.</param>
    /// <param name="beam">The image.</param>
    /// <param name="error">Of the probe, away from the weld positive, mm.</param>
    /// <param name="skewError">rad.</param>
    public static (ImageGeometry? Image, string? NotComputed) Of(PassSection section, Beam beam, double error = 0, double skewError = 0)
    {
        if (beam.ImagingPath is not { } path || beam.Region is not { } region) return (null, "the image's path or region is not stated");
        if (path.Transmit.Count == 0 || path.Receive.Count == 0) return (null, "the imaging path has a way without legs");
        if (Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) return (null, "the beam's probe is missing");
        if (probe.Transducer.IsDual) return (null, "a total-focusing image of a dual probe is not computed");
        var (transducer, wedge) = (probe.Transducer, probe.Wedge);
        if (transducer.Elements <= 1) return (null, "a total-focusing image needs an array");
        var (first, count) = LawCount.FirstAperture(beam, transducer);
        if (first < 1 || count < 1 || first + (long)count - 1 > transducer.Elements) return (null, LawFaultText.Of(LawFault.OutsideArray));
        var speeds = section.SpeedsOn(probe.Side);
        var waves = path.Transmit.Concat(path.Receive).Distinct().Select(wave => SpeedOf(speeds, wave)).ToArray();
        if (wedge.Longitudinal is not { MetresPerSecond: > 0 } wedgeSpeed || waves.Any(speed => !(speed > 0))) return (null, LawFaultText.Of(LawFault.UnknownSpeed));
        if (wedge.FirstElement is not { } place || wedge.ArraySlope is not { } slope || !(transducer.Frequency.Hertz > 0) || !(transducer.Pitch.Millimetres > 0))
        {
            return (null, LawFaultText.Of(LawFault.Geometry));
        }

        var contoured = wedge.ContourDiameter is not null && wedge.ContourDirection == ContourDirection.AlongBeam;
        var sole = new Sole(
            wedge.Length.Millimetres, contoured, section.Rays, wedgeSpeed.MillimetresPerSecond, BuiltInMaterials.Water.Longitudinal.MillimetresPerSecond);
        if (!double.IsFinite(sole.HalfArc)) return (null, LawFaultText.Of(LawFault.Geometry));
        var bounds = Bounds(section, region);
        if (!(bounds.ToY > bounds.FromY && bounds.ToZ > bounds.FromZ)) return (null, "the imaged region is empty or lies outside the wall");

        var elements = new (double, double)[count];
        for (var index = 0; index < count; index++)
        {
            var towardsFront = (wedge.ElementOneAtFront ? -1 : 1) * (first - 1 + index) * transducer.Pitch.Millimetres;
            var (sine, cosine) = Math.SinCos(slope.Radians);
            elements[index] = (
                sole.Half - place.BehindFront.Millimetres + (towardsFront * cosine), place.Height.Millimetres + (towardsFront * sine));
        }

        if (elements.Any(element => !(element.Item2 > 0))) return (null, LawFaultText.Of(LawFault.Geometry));
        double[] down = [.. path.Transmit.Select(wave => SpeedOf(speeds, wave))];

        // The receiving way as seen from the array: its last wave first.
        double[] up = [.. path.Receive.Select(wave => SpeedOf(speeds, wave)).Reverse()];
        return (new ImageGeometry(
            section, probe, beam, sole, probe.IndexOffset.Millimetres + error, Math.Cos(probe.Skew.Radians + beam.Skew.Radians + skewError))
        {
            Elements = elements,
            Slope = slope.Radians,
            WedgeSpeed = wedgeSpeed.MillimetresPerSecond,
            Frequency = transducer.Frequency.Hertz,
            TransmitCritical = CriticalOf(speeds, down[0]),
            ReceiveCritical = CriticalOf(speeds, up[0]),
            Transmit = new Way(section.Rays, down),
            Receive = new Way(section.Rays, up),
            IsOneWay = down.AsSpan().SequenceEqual(up),
            ShortestWavelength = waves.Min() / transducer.Frequency.Hertz,
            Region = bounds,
        }, null);
    }

    /// <summary>First critical angle, in the part: <c>sin θ = vT / vL</c>.</summary>
    private static double CriticalOf(SoundSpeeds speeds, double first) => speeds is { Transverse: { } transverse, Longitudinal: { } longitudinal }
        && first == transverse.MillimetresPerSecond
        ? Refraction.Through(Math.PI / 2, longitudinal.MillimetresPerSecond, first)
        : 0;

    private static double SpeedOf(SoundSpeeds speeds, Wave wave) =>
        (wave == Wave.Longitudinal ? speeds.Longitudinal : speeds.Transverse)?.MillimetresPerSecond ?? double.NaN;

    private static (double FromY, double ToY, double FromZ, double ToZ) Bounds(PassSection section, ImageRegion region)
    {
        var wall = section.Thickness;
        var (oneY, otherY) = (region.FromAcross.Millimetres, region.ToAcross.Millimetres);
        var (oneZ, otherZ) = (region.FromDepth.At(wall), region.ToDepth.At(wall));
        return (Math.Min(oneY, otherY), Math.Max(oneY, otherY), Math.Max(0, Math.Min(oneZ, otherZ)), Math.Min(wall, Math.Max(oneZ, otherZ)));
    }
}
