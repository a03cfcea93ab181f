using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Contact;

/// <summary>What full rock does to one law.</summary>
internal static class RockWork
{
    private const string NotEntering = "tilted to its edge, the wedge no longer sends this beam into the part";

    public static RockShift Of(PassSection section, MountedProbe probe, Beam beam, Law law) => new(() => Work(section, probe, beam, law));

    private static (Angle? Angle, Length? Exit, Angle? Squint, string? NotComputed) Work(PassSection section, MountedProbe probe, Beam beam, Law law)
    {
        if (law.Study.Fault != LawFault.None) return (null, null, null, LawFaultText.Of(law.Study.Fault));
        var speeds = section.SpeedsOn(probe.Side);
        if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { } part || probe.Wedge.Longitudinal is not { } wedge)
        {
            return (null, null, null, LawFaultText.Of(LawFault.UnknownSpeed));
        }

        var diameter = section.ScanningDiameter is { } curved ? new Length(curved) : (Length?)null;
        if (SoleOnCurve.Of(section.Examination.Part.Curvature, diameter, section.IsInside, probe.Wedge) is not { } contact || contact.Fits)
        {
            return (new Angle(0), new Length(0), new Angle(0), null);
        }

        if (double.IsNaN(contact.FullRock)) return (null, null, null, LawFaultText.Of(LawFault.Geometry));
        return section.Rays.IsCurved
            ? Along(section, probe, beam, law, contact, wedge.MillimetresPerSecond, part.MillimetresPerSecond)
            : Sideways(law, contact.FullRock, wedge.MillimetresPerSecond, part.MillimetresPerSecond);
    }

    private static (Angle? Angle, Length? Exit, Angle? Squint, string? NotComputed) Along(
        PassSection section, MountedProbe probe, Beam beam, Law law, SoleOnCurve contact, double wedgeSpeed, double partSpeed)
    {
        if (Source(section, probe, beam, law) is not { } source) return (null, null, null, LawFaultText.Of(LawFault.Geometry));
        var (worstAngle, worstExit) = (0.0, 0.0);
        for (var tilt = -1; tilt <= 1; tilt++)
        {
            var (x, z) = contact.Axis(tilt);
            var surface = Contour.Circle(x, z, contact.Radius, contact.Bend);
            var tracer = new SoleTracer(contact.Sole, surface, wedgeSpeed, Couplant);
            if (!tracer.TryShoot(source.Place, source.Height, source.Direction, partSpeed, out var traced)) return (null, null, null, NotEntering);
            var angle = traced.PartAngle - law.Ray.PartAngle;
            var exit = surface.ArcTo(traced.Ray.X, traced.Ray.Z) - surface.ArcTo(0, 0) - law.Ray.ExitArc;
            if (law.Ray.PartAngle < 0) angle = -angle;
            if (Math.Abs(angle) > Math.Abs(worstAngle)) worstAngle = angle;
            if (Math.Abs(exit) > Math.Abs(worstExit)) worstExit = exit;
        }

        return (Angle.FromRadians(worstAngle), new Length(worstExit), new Angle(0), null);
    }

    /// <summary>Where the law's ray starts in the wedge; a single element's from where the wedge says that it leaves.</summary>
    private static (double Place, double Height, double Direction)? Source(PassSection section, MountedProbe probe, Beam beam, Law law)
    {
        var sole = LawGeometry.SoleUnder(section, probe.Wedge, 1);
        if (probe.Transducer.Elements > 1)
        {
            if (probe.Wedge.FirstElement is not { } first || probe.Wedge.ArraySlope is not { } slope) return null;
            var count = beam.Aperture?.Count ?? probe.Transducer.Elements;
            var (place, height) = ElementPlaces.At(
                law.Study.FirstElement - 1 + ((count - 1) / 2.0), probe.Transducer.Pitch.Millimetres, slope.Radians, first, probe.Wedge, sole.Half);
            return (place, height, law.Ray.Direction);
        }

        if (probe.Wedge.IndexPointBehindFront is not { } index || probe.Wedge.Path is not { } path) return null;
        if (sole.HasGap) return Back(sole.Half - index.Millimetres, 0, law.Ray.Direction, path.Millimetres);

        // On a contoured sole: back from the place on its arc, at the incidence that the shoe has there.
        var (radius, bend) = (section.Rays.ScanRadius, section.Rays.Bend);
        var polar = law.Ray.ExitArc / radius;
        return Back(
            radius * Math.Sin(polar), bend * radius * (1 - Math.Cos(polar)), law.Ray.WedgeAngle - (bend * polar), path.Millimetres);
    }

    private static (double Place, double Height, double Direction) Back(double x, double z, double direction, double path) =>
        (x - (path * Math.Sin(direction)), (path * Math.Cos(direction)) - z, direction);

    /// <summary>The surface bends across the beam: its normal leans by the rock from the sole's, at right angles to the plane of incidence.</summary>
    private static (Angle? Angle, Length? Exit, Angle? Squint, string? NotComputed) Sideways(Law law, double rock, double wedgeSpeed, double partSpeed)
    {
        var inGap = Refraction.Through(law.Ray.WedgeAngle, wedgeSpeed, Couplant);
        var (sine, cosine) = Math.SinCos(rock);
        var (y, z) = (Math.Sin(inGap), Math.Cos(inGap));

        // d = (0, y, z) meets n = (sin ψ, 0, cos ψ); what lies along the surface grows by the ratio of the speeds.
        var into = z * cosine;
        var ratio = partSpeed / Couplant;
        var (alongX, alongY) = (ratio * -into * sine, ratio * y);
        var alongZ = ratio * (z - (into * cosine));
        var square = (alongX * alongX) + (alongY * alongY) + (alongZ * alongZ);
        if (!(square <= 1)) return (null, null, null, NotEntering);
        var shift = Math.Asin(Math.Sqrt(square)) - Math.Abs(law.Ray.PartAngle);

        // Across the plane of n and the beam's own way: how far the track on the surface is turned.
        var across = Math.Sqrt((alongX * alongX) + (alongZ * alongZ));
        return (Angle.FromRadians(shift), new Length(0), Angle.FromRadians(Math.Asin(Math.Min(1, across))), null);
    }

    private static double Couplant => BuiltInMaterials.Water.Longitudinal.MillimetresPerSecond;
}
