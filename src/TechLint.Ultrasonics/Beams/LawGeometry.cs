using System.Collections.Immutable;
using TechLint.Ultrasonics.Duals;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// From a mounted probe and a beam to its laws: aperture centre, wedge angle, steering, exit point, apertures and legs.
/// Docs of each quantity stand at <see cref="LawStudy"/>. Lengths in mm, angles in rad, speeds in mm/s.
/// </summary>
/// <remarks>
/// Dual probes: angles are those of the plane of incidence between the halves, in which the two beams cross; see <see cref="RoofTilt"/>.
/// Left out: the lens effect of a curved interface on the beam's width; the fall of transmission towards grazing angles.
/// </remarks>
internal static class LawGeometry
{
    /// <summary>
    /// Far-field echo width of a round element against a strip of the same size: 0.4429 / 0.5145 (sinc² and (2J1/x)² at one half).
    /// A round element counts as a strip that much smaller, so that both spread alike.
    /// </summary>
    public const double StripForRound = 0.4429 / 0.5145;

    /// <summary>The beam's laws; empty where it has none of its own (pairs, coupling monitors without an angle).</summary>
    /// <param name="section">Where.</param>
    /// <param name="probe">The probe that sends it.</param>
    /// <param name="beam">The beam.</param>
    /// <param name="skewError">Turn of the probe beside what is stated.</param>
    public static ImmutableArray<Law> Of(PassSection section, MountedProbe probe, Beam beam, double skewError = 0)
    {
        var setup = Setup.Of(section, probe, beam, skewError);
        if (setup is null) return [Law.Broken(LawFault.UnknownSpeed, Unstated)];
        if (!(setup.Value.Frequency > 0)) return [Law.Broken(LawFault.Geometry, Unstated)];
        if (probe.Transducer.Elements <= 1) return [OfSingleElement(setup.Value)];
        if (beam.Angles is not { } sweep)
        {
            return beam.Scan == ScanKind.Lamination ? [OfArray(setup.Value, default, LawCount.FirstAperture(beam, probe.Transducer))] : [];
        }

        if (LawCount.Of(beam, probe.Transducer) is not { } count) return [Law.Broken(LawFault.Geometry, Unstated)];
        var laws = ImmutableArray.CreateBuilder<Law>(count);
        for (var index = 0; index < count; index++)
        {
            laws.Add(beam.Scan == ScanKind.Linear
                ? OfArray(setup.Value, sweep.From, LawCount.Aperture(beam, probe.Transducer, index))
                : OfArray(setup.Value, LawCount.AngleAt(sweep, index), LawCount.FirstAperture(beam, probe.Transducer)));
        }

        return laws.MoveToImmutable();
    }

    /// <summary>The sole of a wedge on a section, its gap filled with couplant of water's speed.</summary>
    public static Sole SoleUnder(PassSection section, Wedge wedge, double wedgeSpeed) => new(
        wedge.Length.Millimetres, wedge.ContourDiameter is not null && wedge.ContourDirection == ContourDirection.AlongBeam, section.Rays,
        wedgeSpeed, BuiltInMaterials.Water.Longitudinal.MillimetresPerSecond);

    private static Law OfArray(in Setup setup, Angle angle, (int First, int Count) aperture)
    {
        var (transducer, wedge) = (setup.Probe.Transducer, setup.Probe.Wedge);
        if (aperture.First < 1 || aperture.Count < 1 || aperture.First + (long)aperture.Count - 1 > transducer.Elements)
        {
            return Law.Broken(LawFault.OutsideArray, angle, aperture.First);
        }

        if (!(Math.Abs(angle.Degrees) < RightAngle)) return Law.Broken(LawFault.NotRefracted, angle, aperture.First);
        if (wedge.FirstElement is not { } first || wedge.ArraySlope is not { } arraySlope || double.IsNaN(setup.Sole.HalfArc))
        {
            return Law.Broken(LawFault.Geometry, angle, aperture.First);
        }

        var (slope, pitch) = (arraySlope.Radians, transducer.Pitch.Millimetres);
        var (place, height) = ElementPlaces.At(aperture.First - 1 + ((aperture.Count - 1) / 2.0), pitch, slope, first, wedge, setup.Sole.Half);
        if (!setup.TryAim(place, height, angle.Radians, slope, out var ray, out var leaning))
        {
            return Law.Broken(LawFault.NotRefracted, angle, aperture.First);
        }

        var steering = ray.Direction - slope;
        var length = aperture.Count * pitch;
        var effective = length * Math.Cos(steering) * ray.Squeeze;
        var lobe = GratingLobeOf(leaning, ray, slope, steering, pitch).Angle;
        var law = new LawStudy(
            leaning.FaultOf(ray), angle, Angle.FromRadians(ray.WedgeAngle), Angle.FromRadians(steering), aperture.First,
            default, default, new Length(length - transducer.Gap.Millimetres), new Length(effective), default, new Length(leaning.TrueWedgePath(ray)),
            double.IsNaN(lobe) ? null : Angle.FromRadians(lobe), []);
        return Complete(leaning, law, ray, length, steering, effective);
    }

    /// <summary>How loud the nearest grating lobe is; NaN where none enters the part. Costs more than the law: worked out when a study shows it.</summary>
    public static double GratingLobeLevel(PassSection section, MountedProbe probe, Beam beam, Law law)
    {
        if (law.Study.GratingLobeAngle is null || probe.Wedge.ArraySlope is not { } slope || Setup.Of(section, probe, beam, 0) is not { } upright) return double.NaN;
        var (transducer, pitch) = (probe.Transducer, probe.Transducer.Pitch.Millimetres);
        var setup = upright.Leaning(probe.Wedge.RoofAngle is { } roof && transducer.IsDual ? RoofTilt.SteeringFrom(law.Steering, roof.Radians) : 0);
        var (nearest, angle) = GratingLobeOf(setup, law.Ray, slope.Radians, law.Steering, pitch);
        if (double.IsNaN(nearest)) return double.NaN;
        var order = (int)Math.Round((Math.Sin(nearest) - Math.Sin(law.Steering)) * pitch * setup.Frequency / setup.WedgeSpeed);
        return Fields.GratingLevel.Decibels(
            PatternOf(setup, law.Ray.PartAngle, law.Steering), PatternOf(setup, angle, nearest), (int)Math.Round(law.Size / pitch), order,
            transducer.Bandwidth?.Fraction);
    }

    /// <summary>Off the array's normal, and in the part; NaN where none enters it.</summary>
    private static (double OffNormal, double Angle) GratingLobeOf(in Setup setup, SoleRay ray, double slope, double steering, double pitch)
    {
        var (sole, speed) = (setup.Sole, setup.Speed);
        var nearest = GratingLobe.Nearest(
            steering, setup.WedgeSpeed / setup.Frequency / pitch, lobe => !double.IsNaN(sole.Refract(lobe + slope, ray.ExitArc, speed)));
        return (nearest, double.IsNaN(nearest) ? double.NaN : sole.Refract(nearest + slope, ray.ExitArc, speed));
    }

    private static double PatternOf(in Setup setup, double partAngle, double offNormal)
    {
        var width = setup.Probe.Transducer.ElementSize.Millimetres * setup.Frequency / setup.WedgeSpeed;
        return Fields.GratingLevel.Pattern(
            setup.Transmission(partAngle), partAngle, Refraction.Through(partAngle, setup.Speed, setup.WedgeSpeed), offNormal, width);
    }

    /// <summary>A wedge of fixed angle says where its beam leaves it and how. Under a flat sole on a curve the surface bends it again.</summary>
    private static Law OfSingleElement(in Setup upright)
    {
        var setup = upright.Leaning(0);
        var (transducer, wedge) = (setup.Probe.Transducer, setup.Probe.Wedge);
        if (wedge.RefractedAngle is not { } refracted) return Law.Broken(LawFault.Geometry, Unstated);
        if (!(Math.Abs(refracted.Degrees) < RightAngle)) return Law.Broken(LawFault.NotRefracted, refracted);
        var angle = refracted.Radians;
        if (wedge.IndexPointBehindFront is not { } indexPoint || wedge.Path is not { } path || wedge.RefractedWave != setup.Beam.Wave
            || double.IsNaN(setup.Sole.HalfArc))
        {
            return Law.Broken(LawFault.Geometry, refracted);
        }

        var direction = Refraction.Through(angle, setup.Speed, setup.WedgeSpeed);
        var place = setup.Sole.Half - indexPoint.Millimetres;
        SoleRay ray;
        if (!setup.Sole.HasGap)
        {
            if (double.IsNaN(direction)) return Law.Broken(LawFault.NotRefracted, refracted);
            ray = new SoleRay(
                direction, direction, setup.Sole.HalfArc - indexPoint.Millimetres, 0, Math.Cos(angle) / Math.Cos(direction), angle);
        }
        else if (!setup.Sole.TryCrossGap(place, direction, setup.Speed, out ray))
        {
            return Law.Broken(LawFault.NotRefracted, refracted);
        }

        ray = ray with { WedgePath = path.Millimetres * Math.Cos(setup.Tilt.InWedge) };
        var size = transducer.ElementSize.Millimetres;
        var effective = size * ray.Squeeze;
        var law = new LawStudy(
            setup.FaultOf(ray), setup.Sole.HasGap ? Angle.FromRadians(ray.PartAngle) : refracted, Angle.FromRadians(ray.WedgeAngle), default, 1, default, default,
            new Length(size), new Length(effective), default, path, null, []);
        return Complete(setup, law, ray, size, 0, effective);
    }

    private static Law Complete(in Setup setup, LawStudy law, SoleRay ray, double size, double steering, double effective)
    {
        var transducer = setup.Probe.Transducer;
        var wavelength = setup.Speed / setup.Frequency;
        var exitBehindFront = setup.Sole.HalfArc - ray.ExitArc;
        var outward = setup.Probe.Side == Side.Left ? -1 : 1;
        var exitY = outward * (setup.Probe.IndexOffset.Millimetres + (exitBehindFront * Math.Cos(setup.ProbeSkew)));
        law = law with
        {
            Divergence = Fields.Divergence.Of(new Length(effective), new Length(wavelength), transducer.IsRound),
            ExitBehindFront = new Length(exitBehindFront),
            ExitY = new Length(exitY),
            NearField = new Length(NearFieldFromExit(transducer, ray, effective, wavelength, setup.WedgeSpeed / setup.Speed)),
        };
        if (law.Fault != LawFault.None) return new Law(law, null, default, ray, size, steering);

        // A skewed beam's projection into the section: lengths shrink by one factor, angles open less.
        var turn = SkewedRay.Shrink(ray.PartAngle, setup.BeamSkew);
        var shrink = turn * Math.Cos(setup.Tilt.InPart);
        var inSection = SkewedRay.InSection(Math.Abs(ray.PartAngle), setup.BeamSkew);
        var direction = -outward * (ray.PartAngle < 0 ? -1 : 1);
        var spread = transducer.IsRound ? effective * StripForRound : effective;
        var lead = ray.WedgePath * setup.WedgeSpeed / setup.Speed * ray.Squeeze * ray.Squeeze;
        var focus = FocusPath.InSection(setup.Section.Rays, setup.Beam.Focus, inSection, exitY, direction, shrink);
        var width = new BeamWidth(spread, wavelength / turn, lead * turn, focus);
        var window = setup.Beam.PathWindow;
        var legs = AllowedLegs(setup.Beam);
        var sight = new SightLine(
            exitY, direction, inSection, width, legs.Mask, (window?.From?.Millimetres ?? 0) * shrink,
            (window?.To?.Millimetres ?? double.PositiveInfinity) * shrink);
        law = law with { Legs = Legs(setup.Section, sight, legs.Last, shrink) };
        return setup.Probe.Transducer.IsDual
            ? WithinOverlap(setup, law, sight, ray, turn, legs.Last) with { Size = size, Steering = steering }
            : new Law(law, sight, width, ray, size, steering);
    }

    /// <summary>A dual probe sees where both halves' beams meet, and nowhere else.</summary>
    private static Law WithinOverlap(in Setup setup, LawStudy law, SightLine sight, SoleRay ray, double turn, int lastLeg)
    {
        var transducer = setup.Probe.Transducer;
        if (transducer.Separation is not { } separation || setup.Probe.Wedge.RoofAngle is null) return Law.Broken(LawFault.Geometry, law.Angle, law.FirstElement);
        var (rays, tilt) = (setup.Section.Rays, setup.Tilt);
        var crossing = new DualCrossing(
            separation.Millimetres, law.WedgePath.Millimetres, tilt,
            transducer.Elevation.Millimetres * (transducer.IsRound ? StripForRound : 1), setup.Speed * Math.Cos(tilt.InPart) / setup.Frequency,
            setup.WedgeSpeed * Math.Cos(tilt.InWedge) / (setup.Speed * Math.Cos(tilt.InPart)));
        var endDepth = (lastLeg & 1) == 1 ? setup.Section.Thickness : 0;
        var angle = Math.Abs(ray.PartAngle);
        var end = rays.TryReach(angle, endDepth, lastLeg, out _, out var path) ? path : rays.ScanRadius * Math.Cos(angle);
        var overlap = crossing.Overlap(end);
        law = law with { Dual = crossing.Study(rays, angle, overlap) };
        var seen = overlap is { } held && Math.Max(sight.PathFrom, held.From * turn) is var from && Math.Min(sight.PathTo, held.To * turn) is var to && from <= to
            ? sight with { PathFrom = from, PathTo = to }
            : null;
        return new Law(law, seen, sight.Width, ray, double.NaN, double.NaN);
    }

    private static double NearFieldFromExit(Transducer transducer, SoleRay ray, double effective, double wavelength, double speedRatio)
    {
        var across = transducer.Elevation.Millimetres;
        var inPlaneRules = !transducer.IsRound && effective >= across;
        var whole = transducer.IsRound
            ? NearField.OfRound(across, wavelength)
            : NearField.OfRectangle(effective, across, wavelength);
        return Math.Max(0, whole - (ray.WedgePath * speedRatio * (inPlaneRules ? ray.Squeeze * ray.Squeeze : 1)));
    }

    private static (int Mask, int Last) AllowedLegs(Beam beam)
    {
        if (beam.Legs.Count == 0) return (1, 1);
        var (mask, last) = (0, 0);
        foreach (var leg in beam.Legs)
        {
            if (leg is < 1 or > MostLegs) continue;
            mask |= 1 << (leg - 1);
            last = Math.Max(last, leg);
        }

        return (mask, last);
    }

    private static ImmutableArray<LegStudy> Legs(PassSection section, SightLine sight, int last, double shrink)
    {
        var legs = ImmutableArray.CreateBuilder<LegStudy>(last);
        for (var leg = 1; leg <= last; leg++)
        {
            var depth = (leg & 1) == 1 ? section.Thickness : 0;
            if (!section.Rays.TryReach(sight.Angle, depth, leg, out var advance, out var path)) break;
            var endY = sight.ExitY + (sight.Direction * advance);
            var incidence = Math.Acos(Math.Cos(section.Rays.IncidenceAtEndOf(sight.Angle, leg)) * shrink);
            var stops = section.IsOnReinforcement(endY, leg);
            legs.Add(new LegStudy(
                leg, new Length(endY), new Length(depth), new Length(path / shrink), Angle.FromRadians(incidence), new Length(sight.Width.At(path)), stops));
            if (stops) break;
        }

        return legs.ToImmutable();
    }

    private const double RightAngle = 90;

    private static readonly Angle Unstated = new(double.NaN);

    /// <summary>Legs beyond this are nonsense, and the mask of legs has no room for them.</summary>
    private const int MostLegs = 30;

    private readonly record struct Setup(
        PassSection Section, MountedProbe Probe, Beam Beam, Sole Sole, double Speed, double WedgeSpeed, double Frequency, double ProbeSkew,
        double BeamSkew, double FirstCritical)
    {
        /// <summary>Steps of the fixed point between steering and tilt: each gains two digits or more.</summary>
        private const int TiltSteps = 24;

        /// <summary>How a dual probe's beam leans out of the plane of incidence; none for single probes. Speeds, sole and critical angle are then those of that plane.</summary>
        public RoofTilt Tilt { get; init; }

        public double TrueWedgePath(SoleRay ray) => ray.WedgePath / Math.Cos(Tilt.InWedge);

        /// <summary>As the plane of incidence of a beam shows it that is steered by β in a half under the roof; itself for single probes.</summary>
        public Setup Leaning(double steering)
        {
            if (!Probe.Transducer.IsDual || Probe.Wedge.RoofAngle is not { } roof) return this;
            var (wedge, part) = (WedgeSpeed * Math.Cos(Tilt.InWedge), Speed * Math.Cos(Tilt.InPart));
            var tilt = RoofTilt.Of(roof.Radians, steering, wedge, part);
            var (wedgeInPlane, partInPlane) = (tilt.InPlane(wedge, wedge), tilt.InPlane(part, wedge));
            return this with
            {
                Tilt = tilt,
                Sole = SoleOf(Section, Probe, wedgeInPlane, tilt.InPlane(BuiltInMaterials.Water.Longitudinal.MillimetresPerSecond, wedge)),
                Speed = partInPlane,
                WedgeSpeed = wedgeInPlane,
                FirstCritical = LongitudinalSpeed > 0 ? Critical(tilt.InPlane(LongitudinalSpeed, wedge), partInPlane) : 0,
            };
        }

        public required double LongitudinalSpeed { get; init; }

        /// <summary>The ray at an angle in the part, and the setup as its own tilt shows it.</summary>
        public bool TryAim(double u, double height, double angle, double slope, out SoleRay ray, out Setup leaning)
        {
            leaning = Leaning(0);
            if (!leaning.Sole.TryAim(u, height, angle, leaning.Speed, out ray)) return false;
            if (!Probe.Transducer.IsDual || Probe.Wedge.RoofAngle is not { } roof) return true;
            for (var step = 0; step < TiltSteps; step++)
            {
                leaning = Leaning(RoofTilt.SteeringFrom(ray.Direction - slope, roof.Radians));
                if (!leaning.Sole.TryAim(u, height, angle, leaning.Speed, out ray)) return false;
            }

            return true;
        }

        private static double Critical(double longitudinal, double part) => double.IsNaN(longitudinal) ? 0 : Refraction.Through(Math.PI / 2, longitudinal, part);

        private static Sole SoleOf(PassSection section, MountedProbe probe, double wedgeSpeed, double couplantSpeed)
        {
            var contoured = probe.Wedge.ContourDiameter is not null && probe.Wedge.ContourDirection == ContourDirection.AlongBeam;
            return new Sole(probe.Wedge.Length.Millimetres, contoured, section.Rays, wedgeSpeed, couplantSpeed);
        }

        /// <summary>Null where a speed is unknown.</summary>
        public static Setup? Of(PassSection section, MountedProbe probe, Beam beam, double skewError)
        {
            var speeds = section.SpeedsOn(probe.Side);
            if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { } part
                || probe.Wedge.Longitudinal is not { } wedge) return null;
            var sole = SoleUnder(section, probe.Wedge, wedge.MillimetresPerSecond);
            var longitudinal = beam.Wave == Wave.Transverse ? speeds.Longitudinal?.MillimetresPerSecond ?? 0 : 0;
            var critical = longitudinal > 0 ? Critical(longitudinal, part.MillimetresPerSecond) : 0;
            var probeSkew = probe.Skew.Radians + skewError;
            return new Setup(
                section, probe, beam, sole, part.MillimetresPerSecond, wedge.MillimetresPerSecond, probe.Transducer.Frequency.Hertz,
                probeSkew, probeSkew + beam.Skew.Radians, critical)
            {
                LongitudinalSpeed = longitudinal,
            };
        }

        /// <summary>|T| at an angle in the part.</summary>
        public double Transmission(double partAngle)
        {
            var (speeds, wedge) = (Section.SpeedsOn(Probe.Side), Probe.Wedge.Material);
            return Fields.SlipContact.Transmission(
                Math.Abs(Math.Sin(partAngle)), Fields.Densities.OfWedge(wedge), WedgeSpeed, Fields.Densities.TransverseOfWedge(wedge, WedgeSpeed),
                Fields.Densities.OfPart(speeds.Material), speeds.Longitudinal?.MillimetresPerSecond ?? Speed / Fields.Densities.MetalSpeedRatio,
                speeds.Transverse?.MillimetresPerSecond ?? Speed * Fields.Densities.MetalSpeedRatio, Beam.Wave).Magnitude;
        }

        public LawFault FaultOf(SoleRay ray)
        {
            // Under the first critical angle a longitudinal wave goes along: in the part that is sin θ < vT / vL.
            if (Beam.Wave == Wave.Transverse && Math.Abs(ray.PartAngle) < FirstCritical) return LawFault.BelowFirstCritical;
            return Math.Abs(ray.ExitArc) <= Sole.HalfArc ? LawFault.None : LawFault.OutsideWedge;
        }
    }
}
