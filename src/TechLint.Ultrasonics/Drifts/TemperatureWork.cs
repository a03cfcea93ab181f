using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Drifts;

/// <summary>The worst shift of a beam's laws by drifts of temperature.</summary>
internal static class TemperatureWork
{
    private const string NoLaw = "the beam has no law";
    private const string NoSurface = "no surface temperature is stated";
    private const string NoBlock = "no temperature of the block is stated";

    public static TemperatureStudy Of(PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> laws) => new(() =>
    {
        var examination = section.Examination;
        var permitted = examination.BlockToPart;
        var either = Worst(section, probe, beam, laws, [new(-permitted.Kelvins), permitted]);
        if (examination.SurfaceTemperature is not { } surface) return (either, new(null, NoSurface));
        if (examination.BlockTemperature is not { } block) return (either, new(null, NoBlock));
        var drifts = ImmutableArray.CreateBuilder<TemperatureDifference>();
        if (surface.From is { } coldest) drifts.Add(new(coldest.DegreesCelsius - block.DegreesCelsius));
        if (surface.To is { } hottest) drifts.Add(new(hottest.DegreesCelsius - block.DegreesCelsius));
        return (either, drifts.Count == 0 ? new(null, NoSurface) : Worst(section, probe, beam, laws, drifts.ToImmutable()));
    });

    private static TemperatureStudy.Shift Worst(
        PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> laws, ImmutableArray<TemperatureDifference> drifts)
    {
        var speeds = section.SpeedsOn(probe.Side);
        if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { } part || probe.Wedge.Longitudinal is not { } wedge)
        {
            return new(null, LawFaultText.Of(LawFault.UnknownSpeed));
        }

        if (MaterialDrifts.Find(probe.Wedge.Material) is not { } wedgeDrift) return new(null, Unknown(probe.Wedge.Material));
        if (MaterialDrifts.Find(speeds.Material)?.Of(beam.Wave) is not { } partDrift) return new(null, Unknown(speeds.Material));
        AngleShift? worst = null;
        foreach (var law in laws)
        {
            if (law.Study.Fault != LawFault.None) continue;
            foreach (var drift in drifts)
            {
                foreach (var both in (ReadOnlySpan<bool>)[true, false])
                {
                    var warmed = wedgeDrift.Longitudinal.After(wedge, drift).MillimetresPerSecond;
                    var inPart = (both ? partDrift.After(part, drift) : part).MillimetresPerSecond;
                    var angle = AngleAt(section, probe, beam, law, wedge.MillimetresPerSecond, warmed, inPart);
                    var shift = double.IsNaN(angle) ? double.PositiveInfinity : Math.Abs(angle) - Math.Abs(law.Ray.PartAngle);
                    if (worst is { } held && !(Math.Abs(shift) > Math.Abs(held.Shift.Radians))) continue;
                    worst = new AngleShift(law.Study.Angle, Angle.FromRadians(shift), drift, both);
                }
            }
        }

        return new(worst, worst is null ? NoLaw : null);
    }

    internal static string Unknown(string material) => $"how the speed of sound in {material} changes with temperature is not known";

    /// <summary>In the part, rad, after the drift; NaN where the beam does not enter any more.</summary>
    internal static double AngleAt(PassSection section, MountedProbe probe, Beam beam, Law law, double wedgeSpeed, double warmed, double partSpeed)
    {
        var sole = LawGeometry.SoleUnder(section, probe.Wedge, warmed);
        if (probe.Transducer.Elements <= 1)
        {
            // The shoe fixes the direction in the wedge.
            if (!sole.HasGap) return Refraction.Through(law.Ray.WedgeAngle, warmed, partSpeed);
            var place = sole.Half - (probe.Wedge.IndexPointBehindFront?.Millimetres ?? double.NaN);
            return sole.TryCrossGap(place, law.Ray.Direction, partSpeed, out var crossed) ? crossed.PartAngle : double.NaN;
        }

        if (probe.Wedge.FirstElement is not { } first || probe.Wedge.ArraySlope is not { } slope) return double.NaN;
        var steering = Math.Asin(Math.Sin(law.Steering) * warmed / wedgeSpeed);
        var count = beam.Aperture?.Count ?? probe.Transducer.Elements;
        var (centre, height) = ElementPlaces.At(
            law.Study.FirstElement - 1 + ((count - 1) / 2.0), probe.Transducer.Pitch.Millimetres, slope.Radians, first, probe.Wedge, sole.Half);
        return sole.Tracer().TryShoot(centre, height, slope.Radians + steering, partSpeed, out var traced) ? traced.PartAngle : double.NaN;
    }
}
