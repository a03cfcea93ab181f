using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>Turned beams against vectors in space, traced from wall to wall.</summary>
public sealed class SkewTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(45, 10, 20, 300, false), InlineData(60, -20, 20, 300, false), InlineData(40, 35, 12, 168.3, false), InlineData(55, 15, 20, 300, true), InlineData(70, 25, 8, 219.1, true)]
    public void Around_a_pipe_a_turned_ray_is_the_section_s_own_ray_on_a_helix(double angle, double skew, double wall, double diameter, bool inside)
    {
        var section = inside ? SectionRays.FromInside(wall, diameter) : SectionRays.FromOutside(wall, diameter);
        var projected = SkewedRay.InSection(angle * Degree, skew * Degree);
        var shrink = SkewedRay.Shrink(angle * Degree, skew * Degree);
        var (scan, opposite) = (section.ScanRadius, inside ? section.ScanRadius + wall : section.ScanRadius - wall);

        // Axis along x; the ray starts on top and runs down (outwards, from inside).
        var down = inside ? 1 : -1;
        var place = (X: 0.0, Y: 0.0, Z: scan);
        var way = (X: Math.Sin(angle * Degree) * Math.Sin(skew * Degree), Y: Math.Sin(angle * Degree) * Math.Cos(skew * Degree), Z: down * Math.Cos(angle * Degree));
        var path = 0.0;
        for (var leg = 1; leg <= 4; leg++)
        {
            var radius = (leg & 1) == 1 ? opposite : scan;
            var (a, b) = ((way.Y * way.Y) + (way.Z * way.Z), (place.Y * way.Y) + (place.Z * way.Z));
            var c = (place.Y * place.Y) + (place.Z * place.Z) - (radius * radius);
            var roots = new[] { (-b - Math.Sqrt((b * b) - (a * c))) / a, (-b + Math.Sqrt((b * b) - (a * c))) / a };
            var step = roots.Where(root => root > 1e-6).Min();
            place = (place.X + (step * way.X), place.Y + (step * way.Y), place.Z + (step * way.Z));
            path += step;
            var normal = (Y: place.Y / radius, Z: place.Z / radius);
            var cosine = (way.Y * normal.Y) + (way.Z * normal.Z);

            section.TryReach(projected, (leg & 1) == 1 ? wall : 0, leg, out var advance, out var inSection).Should().BeTrue();
            (Math.Atan2(place.Y, place.Z) * scan).Should().BeApproximately(advance, 1e-7);
            if (leg == 4)
            {
                var title = FormattableString.Invariant($"{angle} deg turned by {skew} deg, wall {wall} mm, diameter {diameter} mm, {(inside ? "inside" : "outside")}, end of leg 4");
                Records($"along the surface: {title}", Math.Atan2(place.Y, place.Z) * scan, advance, "mm");
                Records($"path: {title}", path, inSection / shrink, "mm");
            }

            path.Should().BeApproximately(inSection / shrink, 1e-7);
            place.X.Should().BeApproximately(path * Math.Sin(angle * Degree) * Math.Sin(skew * Degree), 1e-9, "the part along the axis stays");
            Math.Acos(Math.Abs(cosine)).Should().BeApproximately(Math.Acos(Math.Cos(section.IncidenceAtEndOf(projected, leg)) * shrink), 1e-9);
            way = (way.X, way.Y - (2 * cosine * normal.Y), way.Z - (2 * cosine * normal.Z));
        }
    }

    private static void Records(string quantity, double expected, double got, string unit) =>
        Checks.Record("turned beams", quantity, expected, got, 1e-6, unit, "vectors in space, traced from wall to wall", Checks.Computed);

    [Fact]
    public void The_angle_in_the_section_is_that_of_the_vector_s_shadow()
    {
        var (t, s) = (63 * Degree, 17 * Degree);
        SkewedRay.InSection(new Angle(63), new Angle(17)).Radians.Should().BeApproximately(Math.Atan2(Math.Sin(t) * Math.Cos(s), Math.Cos(t)), 1e-12);
        Given.Deg(63).Degrees.Should().Be(63);
    }
}
