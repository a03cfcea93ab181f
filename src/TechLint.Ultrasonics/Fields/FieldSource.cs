using System.Collections.Immutable;
using System.Numerics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// A probe as sources of sound, and the field they make in the part: strips that lie along the array (or across a single element), each sending one ray to a place.
/// </summary>
/// <remarks>
/// One strip: <c>T(θ) · spread · across · sinc(π w f sin β'/vw) · exp(2πif(t − delay))</c>: transmission by <see cref="SlipContact"/>, spread by the ray tube of
/// <see cref="InterfaceRays"/>, the size across by <see cref="FresnelStrip"/>, w the strip's width and β' the direction from the element's normal (a piston in a rigid baffle).
/// The sum is two-dimensional in the plane of incidence with the third dimension by Fresnel diffraction: elements are long across the plane, their near field there often holds the
/// weld, and a full sum of points would cost a hundred times as much. Left out: attenuation, head and surface waves, the wedge's own echoes, the curve of a girth weld's surface across the
/// beam, reflection losses at the surfaces (legs are mirrored whole, which holds for transverse waves at more than 33° in steel). Valid from about one strip width from the elements on.
/// </remarks>
internal sealed class FieldSource
{
    private readonly ImmutableArray<Strip> strips;
    private readonly InterfaceRays rays;
    private readonly SlipContact contact;
    private readonly PassSection section;
    private readonly Beam beam;
    private readonly double wedgeSpeed;
    private readonly double partSpeed;
    private readonly double slope;
    private readonly double wavelength;
    private readonly double soleCentre;
    private readonly double forwardPerY;
    private readonly int stripsPerElement;

    private FieldSource(
        PassSection section, MountedProbe probe, Beam beam, double wedgeSpeed, double partSpeed, SlipContact contact, Sole sole, double slope, ImmutableArray<Strip> strips, int stripsPerElement)
    {
        (this.section, this.beam, this.wedgeSpeed, this.partSpeed, this.contact, this.slope, this.strips) = (section, beam, wedgeSpeed, partSpeed, contact, slope, strips);
        this.stripsPerElement = stripsPerElement;
        rays = new InterfaceRays(section.Rays, wedgeSpeed, partSpeed, sole.Gap);
        wavelength = wedgeSpeed / probe.Transducer.Frequency.Hertz;
        Spectrum = Spectrum.Of(probe.Transducer);
        var skew = Math.Cos(probe.Skew.Radians);
        var outward = probe.Side == Side.Left ? -1 : 1;
        soleCentre = outward * (probe.IndexOffset.Millimetres + (sole.HalfArc * skew));
        forwardPerY = -outward / Math.Cos(probe.Skew.Radians + beam.Skew.Radians);
        BeamSkew = probe.Skew.Radians + beam.Skew.Radians;
    }

    public Spectrum Spectrum { get; init; }

    public double BeamSkew { get; }

    public int Count => strips.Length;

    /// <summary>The strips that some law asked for so far uses; the others send no ray.</summary>
    public (int From, int To) Used { get; private set; }

    /// <summary>The source of a sound beam, or why there is none.</summary>
    public static (FieldSource? Source, string? Reason) Of(PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> laws)
    {
        var (transducer, wedge) = (probe.Transducer, probe.Wedge);
        if (transducer.Kind is TransducerKind.DualElement or TransducerKind.DualPhasedArray) return (null, "the field of a dual probe is not computed");
        var speeds = section.SpeedsOn(probe.Side);
        if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { MetresPerSecond: > 0 } part
            || wedge.Longitudinal is not { MetresPerSecond: > 0 } inWedge || !(transducer.Frequency.Hertz > 0)) return (null, "a speed of sound is not known");
        var skewed = probe.Skew.Radians + beam.Skew.Radians;
        if (section.Rays.IsCurved && skewed != 0) return (null, "the field of a skewed beam in a curved section is not computed");
        if (!(Math.Abs(skewed) < Math.PI / 2)) return (null, "the probe does not point at the weld");
        if (laws.FirstOrDefault(law => law.Sight is not null) is not { } first) return (null, "the beam has no law");

        var (wedgeSpeed, partSpeed) = (inWedge.MillimetresPerSecond, part.MillimetresPerSecond);
        var sole = LawGeometry.SoleUnder(section, wedge, wedgeSpeed);
        var through = new SlipContact(
            Densities.OfWedge(wedge.Material), wedgeSpeed, Densities.TransverseOfWedge(wedge.Material, wedgeSpeed), Densities.OfPart(speeds.Material),
            speeds.Longitudinal?.MillimetresPerSecond ?? partSpeed / Densities.MetalSpeedRatio,
            speeds.Transverse?.MillimetresPerSecond ?? partSpeed * Densities.MetalSpeedRatio, beam.Wave);
        var inWedgeLength = wedgeSpeed / transducer.Frequency.Hertz;
        if (transducer.Elements > 1)
        {
            if (wedge.FirstElement is not { } place || wedge.ArraySlope is not { } angle || !(transducer.Pitch.Millimetres > 0)) return (null, "the wedge does not say where its array lies");
            var each = PerElement(transducer.ElementSize.Millimetres, inWedgeLength);
            if (transducer.Elements * each > MostStrips) return (null, "the probe has more elements than the field is computed for");
            return (new FieldSource(
                section, probe, beam, wedgeSpeed, partSpeed, through, sole, angle.Radians, ArrayStrips(transducer, wedge, sole, place, angle.Radians, each), each), null);
        }

        // A single element stands square to its axis, at the wedge path's end.
        var polar = section.Rays.IsCurved && !sole.HasGap ? first.Ray.ExitArc / section.Rays.ScanRadius : 0;
        var normal = first.Ray.WedgeAngle - (section.Rays.Bend * polar);
        var (u, lift) = sole.HasGap ? (sole.Half - (wedge.IndexPointBehindFront?.Millimetres ?? 0), 0.0)
            : section.Rays.IsCurved ? (section.Rays.ScanRadius * Math.Sin(polar), section.Rays.Bend * section.Rays.ScanRadius * (Math.Cos(polar) - 1))
            : (first.Ray.ExitArc, 0.0);
        var centre = (U: u - (first.Ray.WedgePath * Math.Sin(normal)), Height: lift + (first.Ray.WedgePath * Math.Cos(normal)));
        var count = PerElement(transducer.ElementSize.Millimetres, inWedgeLength / 2);
        return count > MostStrips
            ? (null, "the element is too large for the field to be computed")
            : (new FieldSource(section, probe, beam, wedgeSpeed, partSpeed, through, sole, normal, SingleStrips(transducer, centre, normal, count), count), null);
    }

    /// <summary>A place of the section (y along the scanning surface, pass frame) forward from the sole's centre.</summary>
    public double Forward(double y) => (y - soleCentre) * forwardPerY;

    /// <summary>The rays to one place: a term for each strip. <paramref name="guess"/> is kept from place to place.</summary>
    /// <returns>False where no strip reaches it.</returns>
    public bool TryTerms(double forward, double depth, int leg, Span<Term> terms, Span<double> guess)
    {
        var any = false;
        var (from, to) = Used;
        for (var index = 0; index < strips.Length; index++)
        {
            if (index < from || index >= to) continue;
            var strip = strips[index];
            if (!rays.TryFind(strip.U, strip.Height, forward, depth, leg, guess[index], out var ray))
            {
                terms[index] = default;
                guess[index] = double.NaN;
                continue;
            }

            any = true;
            guess[index] = ray.OnSole;
            var across = FresnelStrip.At(strip.Across, wavelength, ray.WedgePath + (ray.PartPath * partSpeed / wedgeSpeed));
            terms[index] = new Term(
                rays.TimeOf(ray), contact.At(ray.PartSine, beam.Wave) * across * ray.Spread * strip.Width,
                Math.PI * strip.Width * Math.Sin(ray.Direction - slope) / wedgeSpeed, ray.Exit, ray.PartSine, ray.PartPath);
        }

        return any;
    }

    /// <summary>Transmission delays of a law: least time to its focus, or a straight wave front in the wedge where none is stated.</summary>
    public FieldLaw LawOf(Law law)
    {
        var (first, delays) = DelaysOf(law);
        Used = Used.To == 0 ? (first, first + delays.Length) : (Math.Min(Used.From, first), Math.Max(Used.To, first + delays.Length));
        return new FieldLaw(law, first, delays, Spectrum);
    }

    /// <summary>The unbroken way to a place, as the middle strip of a law goes: no bounce falls on cap or root.</summary>
    public bool IsUnbroken(in Term middle, int leg)
    {
        if (leg == 1) return true;
        var angle = Math.Asin(Math.Min(1, Math.Abs(middle.PartSine)));
        for (var bounce = 1; bounce < leg; bounce++)
        {
            if (!section.Rays.TryReach(angle, (bounce & 1) == 1 ? section.Thickness : 0, bounce, out var advance, out _)) return false;
            if (section.IsOnReinforcement(YOf(middle.Exit + (middle.PartSine < 0 ? -advance : advance)), bounce)) return false;
        }

        return true;
    }

    private (int First, double[] Delays) DelaysOf(Law law)
    {
        var first = (law.Study.FirstElement - 1) * stripsPerElement;
        var count = law.Sight is null ? 0 : Math.Max(0, Math.Min(strips.Length - first, CountOf(law)));
        var delays = new double[count];
        if (count == 0) return (first, delays);
        var focus = beam.Focus.Kind != FocusKind.None && strips.Length > stripsPerElement ? PlaceOn(law, FocusOf(law)) : null;
        for (var index = 0; index < count; index++)
        {
            // All strips of an element share its delay.
            var element = index / stripsPerElement;
            if (index % stripsPerElement != 0)
            {
                delays[index] = delays[index - 1];
                continue;
            }

            var (u, height) = CentreOf(first + (element * stripsPerElement));
            if (focus is { } place && rays.TryFind(u, height, place.Forward, place.Depth, place.Leg, double.NaN, out var ray))
            {
                delays[index] = rays.TimeOf(ray);
            }
            else
            {
                var (sine, cosine) = Math.SinCos(law.Steering + slope);
                delays[index] = strips.Length == stripsPerElement ? 0 : ((height * cosine) - (u * sine)) / wedgeSpeed;
            }
        }

        return (first, delays);
    }

    /// <summary>Where a law's axis is at a path of the beam's own from the exit point; null where it does not get there.</summary>
    public (double Forward, double Depth, int Leg)? PlaceOn(Law law, double path)
    {
        if (!(path > 0)) return null;
        var angle = Math.Abs(law.Ray.PartAngle);
        var sign = law.Ray.PartAngle < 0 ? -1 : 1;
        var thickness = section.Thickness;
        if (!section.Rays.TryReach(angle, thickness, 1, out _, out var legPath) || !(path / legPath < MostLegs)) return null;
        var leg = (int)Math.Floor(path / legPath) + 1;
        var rest = path - ((leg - 1) * legPath);
        if ((leg & 1) == 0) rest = legPath - rest;
        var radius = section.Rays.ScanRadius;
        var depth = !section.Rays.IsCurved
            ? rest * Math.Cos(angle)
            : section.Rays.Bend * (radius - Math.Sqrt((radius * radius) + (rest * rest) - (section.Rays.Bend * 2 * radius * rest * Math.Cos(angle))));
        depth = Math.Clamp(depth, 0, thickness);
        return section.Rays.TryReach(angle, depth, leg, out var advance, out _) ? (law.Ray.ExitArc + (sign * advance), depth, leg) : null;
    }

    /// <summary>y of a place forward from the sole's centre.</summary>
    public double YOf(double forward) => soleCentre + (forward / forwardPerY);

    private double FocusOf(Law law)
    {
        var shrink = Math.Sqrt(1 - Math.Pow(Math.Sin(law.Ray.PartAngle) * Math.Sin(BeamSkew), 2));
        return FocusPath.InSection(section.Rays, beam.Focus, law.Sight!.Angle, law.Sight.ExitY, law.Sight.Direction, shrink) / shrink;
    }

    private int CountOf(Law law) => strips.Length == stripsPerElement
        ? stripsPerElement
        : (beam.Aperture?.Count ?? (strips.Length / stripsPerElement)) * stripsPerElement;

    private (double U, double Height) CentreOf(int first)
    {
        var (from, to) = (strips[first], strips[first + stripsPerElement - 1]);
        return ((from.U + to.U) / 2, (from.Height + to.Height) / 2);
    }

    private static int PerElement(double size, double step) => size > 0 && step > 0 ? (int)Math.Min(MostStrips + 1, Math.Max(1, Math.Ceiling(size / step))) : 1;

    private static ImmutableArray<Strip> ArrayStrips(Transducer transducer, Wedge wedge, Sole sole, ElementPlace place, double slope, int each)
    {
        var built = ImmutableArray.CreateBuilder<Strip>(transducer.Elements * each);
        var (sine, cosine) = Math.SinCos(slope);
        var width = transducer.ElementSize.Millimetres / each;
        for (var element = 0; element < transducer.Elements; element++)
        {
            var towardsFront = (wedge.ElementOneAtFront ? -1 : 1) * element * transducer.Pitch.Millimetres;
            for (var index = 0; index < each; index++)
            {
                var x = towardsFront + ((index + 0.5 - (each / 2.0)) * width);
                built.Add(new Strip(
                    sole.Half - place.BehindFront.Millimetres + (x * cosine), place.Height.Millimetres + (x * sine), width, transducer.Elevation.Millimetres));
            }
        }

        return built.MoveToImmutable();
    }

    private static ImmutableArray<Strip> SingleStrips(Transducer transducer, (double U, double Height) centre, double normal, int count)
    {
        var built = ImmutableArray.CreateBuilder<Strip>(count);
        var (sine, cosine) = Math.SinCos(normal);
        var size = transducer.ElementSize.Millimetres;
        for (var index = 0; index < count; index++)
        {
            var x = (((index + 0.5) / count) - 0.5) * size;
            var across = transducer.IsRound ? 2 * Math.Sqrt((size * size / 4) - (x * x)) : transducer.Elevation.Millimetres;
            built.Add(new Strip(centre.U + (x * cosine), centre.Height + (x * sine), size / count, across));
        }

        return built.MoveToImmutable();
    }

    private const int MostStrips = 1024;
    private const double MostLegs = 30;

    /// <param name="U">Forward from the sole's centre, mm.</param>
    /// <param name="Height">Above the contact plane, mm.</param>
    /// <param name="Width">In the plane of incidence, mm.</param>
    /// <param name="Across">Across it, mm.</param>
    private readonly record struct Strip(double U, double Height, double Width, double Across);

    /// <param name="Time">Least time to the place, s.</param>
    /// <param name="Amplitude">All that does not depend on frequency and law.</param>
    /// <param name="Sinc">Argument of the strip's own pattern, for 1 Hz.</param>
    /// <param name="Exit">Arc from the sole's centre, mm.</param>
    /// <param name="PartSine">Of the angle in the part.</param>
    /// <param name="PartPath">From the exit point, mm; 0 where no ray gets there.</param>
    internal readonly record struct Term(double Time, Complex Amplitude, double Sinc, double Exit, double PartSine, double PartPath);
}
