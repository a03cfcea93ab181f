using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>A dual probe's law against a ray of three components: x along the weld, y across it, z down.</summary>
public sealed class DualTests
{
    private const double Degree = Math.PI / 180;
    private const double Offset = 10;
    private const double Wall = 30;
    private const string Traced = "a ray in space refracted by the vector form of Snell's law";

    /// <summary>
    /// One half's ray is sent as the law says, refracted by the vector form of Snell's law and followed to the plane between the halves: it arrives at the stated angle
    /// and the stated depth.
    /// </summary>
    [Theory]
    [InlineData(5, 10, 45, null)]
    [InlineData(4, 12, 60, null)]
    [InlineData(8, 14, 70, null)]
    [InlineData(0.5, 8, 40, null)]
    [InlineData(5, 10, 45, 300.0)]
    [InlineData(6, 12, 60, 500.0)]
    public void The_halves_cross_where_a_ray_in_space_meets_the_plane_between_them(double roof, double separation, double angle, double? diameter)
    {
        var section = SectionOf(roof, separation, angle, diameter);
        var law = Given.LawAt(section, angle, Wave.Longitudinal, new Aperture(1, 16, 16, 1)).Study;
        law.Fault.Should().Be(LawFault.None);
        var (depth, inPlane, exitY, wedgePath) = Trace(law.Steering.Radians, roof * Degree, separation, diameter);
        exitY.Should().BeApproximately(law.ExitY.Millimetres, 1e-8);
        wedgePath.Should().BeApproximately(law.WedgePath.Millimetres, 1e-8);
        var title = FormattableString.Invariant($"{angle} deg longitudinal, roof {roof} deg, separation {separation} mm{(diameter is { } round ? $", diameter {round} mm" : "")}");
        Checks.Record("dual probes", $"angle in the plane between the halves: {title}", inPlane / Degree, angle, 1e-7, "deg", Traced, Checks.Computed);
        Checks.Record("dual probes", $"crossing depth: {title}", depth, law.Dual!.CrossingDepth!.Value.Millimetres, 1e-6, "mm", Traced, Checks.Computed);
    }

    /// <summary>Transmit × receive on the plane between the halves falls by 6 dB at the overlap's ends: far-field sinc of each element's side across.</summary>
    [Fact]
    public void The_overlap_ends_where_both_beams_together_are_six_decibels_down()
    {
        const double Side = 8;
        var law = Given.LawAt(SectionOf(5, 10, 45, null), 45, Wave.Longitudinal, new Aperture(1, 16, 16, 1)).Study;
        var (from, to) = (law.Dual!.OverlapFrom!.Value.Millimetres, law.Dual.OverlapTo!.Value.Millimetres);
        from.Should().BeLessThan(law.Dual.CrossingDepth!.Value.Millimetres);
        to.Should().BeGreaterThan(from);

        // Strictly beyond the near field of the side across, seen from its image in the part.
        var sineWedge = Math.Sin(Math.Atan(Math.Cos(5 * Degree) * Math.Tan(law.Steering.Radians)));
        var across = Math.Sqrt(1 - (sineWedge * sineWedge)) * Math.Sin(5 * Degree);
        var (tiltWedge, tilt) = (Math.Asin(across), Math.Asin(across * Given.Longitudinal / Given.Polystyrene));
        var squeeze = Math.Cos(tilt) / Math.Cos(tiltWedge);
        var (wavelength, aperture) = (Given.Longitudinal / 5000, Side * squeeze);
        var lead = law.WedgePath.Millimetres * Given.Polystyrene / Given.Longitudinal * squeeze * squeeze;
        var path = from / Math.Cos(45 * Degree);
        var distance = Math.Abs((5 - (law.WedgePath.Millimetres * Math.Sin(tiltWedge))) - (path * Math.Tan(tilt))) * Math.Cos(tilt);
        var range = (path / Math.Cos(tilt)) + lead;
        if (range < aperture * aperture / (4 * wavelength)) Assert.Skip("the overlap starts in the near field, where there is no sinc");
        var x = Math.PI * aperture / wavelength * (distance / range);
        Checks.Record(
            "dual probes", "transmit × receive at the overlap's upper end: 45 deg, roof 5 deg, separation 10 mm", 0.5, Math.Pow(Math.Sin(x) / x, 2), 0.02, "-",
            "sinc of an element's side across, far field", Checks.Computed);
    }

    private static PassSection SectionOf(double roof, double separation, double angle, double? diameter)
    {
        var probe = Given.ArrayProbe(offset: Offset) with
        {
            Transducer = Given.Array with { Kind = TransducerKind.DualPhasedArray, Separation = Given.Mm(separation), Elements = 16, Elevation = Given.Mm(8) },
            Wedge = Given.ArrayWedge with
            {
                ArraySlope = Given.Deg(18), FirstElement = new ElementPlace(Given.Mm(5), Given.Mm(24)), RoofAngle = Given.Deg(roof),
                ContourDiameter = diameter is { } outside ? Given.Mm(outside) : null,
            },
        };
        return Given.ArraySection(Wall, diameter, probe: probe);
    }

    private static (double Depth, double InPlane, double ExitY, double WedgePath) Trace(double inPlaneSteering, double roof, double separation, double? diameter)
    {
        const double Slope = 18 * Degree;
        var radius = diameter / 2;

        // The sole's centre; on a pipe the front edge lies an arc away whose sine is half the length.
        var half = radius is { } r ? r * Math.Asin(17 / r) : 17;
        var centre = -(Offset + half);
        var toFront = 7.5 * 0.5;
        var (u, height) = (17 - 24 + (toFront * Math.Cos(Slope)), 5 + (toFront * Math.Sin(Slope)));

        // The array's normal and axis in the plane of incidence (forward, down), tilted by the roof towards +x.
        var steering = Math.Atan(Math.Cos(roof) * Math.Tan(inPlaneSteering));
        double[] direction =
        [
            Math.Cos(steering) * Math.Sin(roof),
            (Math.Cos(steering) * Math.Cos(roof) * Math.Sin(Slope)) + (Math.Sin(steering) * Math.Cos(Slope)),
            (Math.Cos(steering) * Math.Cos(roof) * Math.Cos(Slope)) - (Math.Sin(steering) * Math.Sin(Slope)),
        ];
        double[] place = [-separation / 2, u, -height];
        double wedgePath;
        double[] normal;
        if (radius is { } bent)
        {
            // A cylinder along x whose axis lies below the sole's centre: |(y, z − R)| = R, entered from outside.
            var (b, c) = ((place[1] * direction[1]) + ((place[2] - bent) * direction[2]), (place[1] * place[1]) + ((place[2] - bent) * (place[2] - bent)) - (bent * bent));
            var a = (direction[1] * direction[1]) + (direction[2] * direction[2]);
            wedgePath = (-b - Math.Sqrt((b * b) - (a * c))) / a;
            var (y, z) = (place[1] + (wedgePath * direction[1]), place[2] + (wedgePath * direction[2]));
            normal = [0, -y / bent, (bent - z) / bent];
        }
        else
        {
            wedgePath = height / direction[2];
            normal = [0, 0, 1];
        }

        double[] exit = [.. place.Zip(direction, (p, d) => p + (wedgePath * d))];
        var refracted = Refract(direction, normal, Given.Longitudinal / Given.Polystyrene);
        var path = -exit[0] / refracted[0];
        var (endY, endZ) = (exit[1] + (path * refracted[1]), exit[2] + (path * refracted[2]));
        var inPlane = Math.Atan2((refracted[1] * normal[2]) - (refracted[2] * normal[1]), (refracted[1] * normal[1]) + (refracted[2] * normal[2]));
        return radius is { } pipe
            ? (pipe - Math.Sqrt((endY * endY) + ((endZ - pipe) * (endZ - pipe))), inPlane, centre + (pipe * Math.Atan2(exit[1], pipe - exit[2])), wedgePath)
            : (endZ, inPlane, centre + exit[1], wedgePath);
    }

    /// <summary>Snell in space: the tangential part grows by the ratio of the speeds, the normal one makes a unit vector of it.</summary>
    private static double[] Refract(double[] direction, double[] normal, double ratio)
    {
        var along = direction.Zip(normal, (d, n) => d * n).Sum();
        double[] tangential = [.. direction.Zip(normal, (d, n) => ratio * (d - (along * n)))];
        var rest = Math.Sqrt(1 - tangential.Sum(t => t * t));
        return [.. tangential.Zip(normal, (t, n) => t + (rest * n))];
    }
}
