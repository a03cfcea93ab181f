using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// Where the laws go when the true speeds of sound are not those that the instrument was told. Its delays and its wedges stay as they are:
/// steering <c>sin β' = sin β (1 + y)</c> (delays worked out for the wedge's stated speed), the exit point moves by <c>h (tan δ' − tan δ)</c>,
/// refraction is Snell's law at the true speeds, and a window that was set as a path is a time, so that the true path is <c>(1 + x)</c> times the stated
/// one; x in the part, y in the wedge. mm and rad.
/// </summary>
/// <remarks>Left out: what the wedge's delay adds to the window, and the change of beam width (both of the order of x and y themselves). Diffraction
/// pairs are set on their own lateral wave and back wall, and stay as they are.</remarks>
internal static class DriftedLaws
{
    public static ImmutableArray<(MountedProbe Probe, SightLine Line)> Of(PassSection section, double skewError, SpeedErrors errors)
    {
        if (errors.IsNone) return PassSights.LinesOf(section, skewError);
        var lines = ImmutableArray.CreateBuilder<(MountedProbe, SightLine)>();
        foreach (var beam in section.Pass.Beams)
        {
            if (beam.Scan is not (ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed) || Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) continue;
            var speeds = section.SpeedsOn(probe.Side);
            if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal) is not { } part || probe.Wedge.Longitudinal is not { } wedge) continue;
            var contoured = probe.Wedge.ContourDiameter is not null && probe.Wedge.ContourDirection == ContourDirection.AlongBeam;
            var sole = new Sole(
                probe.Wedge.Length.Millimetres, contoured, section.Rays, wedge.MillimetresPerSecond * (1 + errors.Wedge),
                BuiltInMaterials.Water.Longitudinal.MillimetresPerSecond);
            var probeSkew = probe.Skew.Radians + skewError;
            foreach (var law in LawGeometry.Of(section, probe, beam, skewError))
            {
                if (law.Sight is { } sight
                    && Drifted(law, sight, sole, part.MillimetresPerSecond * (1 + errors.Part), errors, probe.Side, probeSkew, beam.Skew.Radians) is { } moved)
                {
                    lines.Add((probe, moved));
                }
            }
        }

        return lines.ToImmutable();
    }

    /// <summary>Null where no wave of the kind leaves the wedge any more.</summary>
    private static SightLine? Drifted(
        Law law, SightLine sight, in Sole sole, double partSpeed, SpeedErrors errors, Side side, double probeSkew, double beamSkew)
    {
        var sine = Math.Sin(law.Steering) * (1 + errors.Wedge);
        if (!(Math.Abs(sine) < 1)) return null;
        var direction = law.Ray.Direction + Math.Asin(sine) - law.Steering;
        if (!(Math.Abs(direction) < Math.PI / 2)) return null;

        // The wedge of a single element leads its ray as before; its exit point does not move.
        var height = law.Ray.WedgePath * Math.Cos(law.Ray.Direction);
        var step = height * (Math.Tan(direction) - Math.Tan(law.Ray.Direction));
        var angle = sole.Refract(direction, law.Ray.ExitArc + step, partSpeed);
        if (double.IsNaN(angle)) return null;

        var outward = side == Side.Left ? -1 : 1;
        var skew = probeSkew + beamSkew;
        var turned = angle < 0 != law.Ray.PartAngle < 0;
        var before = Math.Sqrt(1 - Math.Pow(Math.Sin(law.Ray.PartAngle) * Math.Sin(skew), 2));
        var after = Math.Sqrt(1 - Math.Pow(Math.Sin(angle) * Math.Sin(skew), 2));
        var stretch = (1 + errors.Part) * after / before;
        return sight with
        {
            ExitY = sight.ExitY - (outward * step * Math.Cos(probeSkew)),
            Direction = turned ? -sight.Direction : sight.Direction,
            Angle = Math.Atan(Math.Tan(Math.Abs(angle)) * Math.Cos(skew)),
            PathFrom = sight.PathFrom * stretch,
            PathTo = sight.PathTo * stretch,
        };
    }
}
