using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Delays;

/// <summary>From a law to its focal law.</summary>
internal static class DelayWork
{
    private const string TurnedOnCurve = "a turned beam on a curved section: its plane of incidence does not cut the surface in a circle";
    private const string BehindTheBeam = "the focus does not lie on this law's way";
    private const string NoWay = "an element has no way to the focus";

    public static FocalLaw Of(PassSection section, MountedProbe probe, Beam beam, Law law) => new(() => Work(section, probe, beam, law));

    private static (ImmutableArray<ElementDelay> Elements, string? NotComputed) Work(PassSection section, MountedProbe probe, Beam beam, Law law)
    {
        var (transducer, wedge) = (probe.Transducer, probe.Wedge);
        if (law.Study.Fault != LawFault.None) return ([], LawFaultText.Of(law.Study.Fault));
        if (transducer.Elements <= 1) return ([new ElementDelay(1, default)], null);
        if (Times(section, probe, beam, law, out var reason) is not { } times) return ([], reason);
        var latest = times.Max();
        var delays = ImmutableArray.CreateBuilder<ElementDelay>(times.Length);
        for (var index = 0; index < times.Length; index++)
        {
            delays.Add(new ElementDelay(law.Study.FirstElement + index, Duration.FromSeconds(latest - times[index])));
        }

        return (delays.MoveToImmutable(), null);
    }

    /// <summary>Seconds from each active element to the law's target.</summary>
    private static double[]? Times(PassSection section, MountedProbe probe, Beam beam, Law law, out string? reason)
    {
        reason = LawFaultText.Of(LawFault.Geometry);
        var (transducer, wedge) = (probe.Transducer, probe.Wedge);
        var speeds = section.SpeedsOn(probe.Side);
        if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { } part || wedge.Longitudinal is not { } inWedge
            || wedge.FirstElement is not { } first || wedge.ArraySlope is not { } slope || law.Sight is not { } sight)
        {
            return null;
        }

        var skew = probe.Skew.Radians + beam.Skew.Radians;
        if (section.Rays.IsCurved && skew != 0)
        {
            reason = TurnedOnCurve;
            return null;
        }

        var speed = part.MillimetresPerSecond;
        var sole = LawGeometry.SoleUnder(section, wedge, inWedge.MillimetresPerSecond);
        var tracer = sole.Tracer();
        var pitch = transducer.Pitch.Millimetres;
        var count = beam.Aperture?.Count ?? transducer.Elements;
        var firstStep = law.Study.FirstElement - 1;
        var (centre, height) = ElementPlaces.At(firstStep + ((count - 1) / 2.0), pitch, slope.Radians, first, wedge, sole.Half);
        if (!tracer.TryShoot(centre, height, law.Ray.Direction, speed, out var own)) return null;

        // On a flat section a turned beam's plane of incidence is as flat; its path is the section's, undone of the projection.
        var shrink = SkewedRay.Shrink(law.Ray.PartAngle, skew);
        var focus = FocusPath.InSection(section.Rays, beam.Focus, sight.Angle, sight.ExitY, sight.Direction, shrink) / shrink;
        var wall = WallOf(section, tracer.Scanned);
        if ((beam.Focus.Kind != FocusKind.None && !(focus > 0)) || !FocalTarget.TryOf(wall, own.Ray, focus, out var target))
        {
            reason = BehindTheBeam;
            return null;
        }

        var times = new double[count];
        for (var index = 0; index < count; index++)
        {
            var (place, above) = ElementPlaces.At(firstStep + index, pitch, slope.Radians, first, wedge, sole.Half);
            times[index] = above > 0 ? LeastTime.To(tracer, place, above, speed, wall, target, law.Ray.Direction) : double.NaN;
            if (double.IsFinite(times[index])) continue;
            reason = NoWay;
            return null;
        }

        reason = null;
        return times;
    }

    private static Wall WallOf(PassSection section, Contour scanned)
    {
        if (!section.Rays.IsCurved) return new Wall(scanned, Contour.PlaneAt(section.Thickness));
        var (radius, bend) = (section.Rays.ScanRadius, section.Rays.Bend);

        // Concentric with the scanning surface; which way that bends is which way the opposite one does.
        return new Wall(scanned, scanned.Concentric(radius - (bend * section.Thickness)));
    }
}
