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
            path.Should().BeApproximately(inSection / shrink, 1e-7);
            place.X.Should().BeApproximately(path * Math.Sin(angle * Degree) * Math.Sin(skew * Degree), 1e-9, "the part along the axis stays");
            Math.Acos(Math.Abs(cosine)).Should().BeApproximately(Math.Acos(Math.Cos(section.IncidenceAtEndOf(projected, leg)) * shrink), 1e-9);
            way = (way.X, way.Y - (2 * cosine * normal.Y), way.Z - (2 * cosine * normal.Z));
        }
    }

    [Theory]
    [InlineData(60, 0, 30, false, 0), InlineData(60, 0, 30, true, 60), InlineData(45, 0, 0, false, 45), InlineData(90, 25, 0, false, 25)]
    public void Incidence_on_a_face_agrees_where_it_can_be_seen_at_a_glance(double angle, double skew, double face, bool upwards, double expected) =>
        SkewedRay.OnFace(new Angle(angle), new Angle(skew), new Angle(face), upwards).Degrees.Should().BeApproximately(expected, 1e-5);

    [Theory]
    [InlineData(55, 12, 30, false), InlineData(65, -20, 10, true), InlineData(45, 5, -37.5, false), InlineData(70, 15, -5, true)]
    public void Incidence_on_a_face_agrees_with_the_nearest_of_many_normals(double angle, double skew, double face, bool upwards)
    {
        // The incidence is what is left to 90 deg of the least angle between the ray and any line in the face: sampled.
        var (t, s, b) = (angle * Degree, skew * Degree, face * Degree);
        var ray = (X: Math.Sin(t) * Math.Sin(s), Y: Math.Sin(t) * Math.Cos(s), Z: (upwards ? -1 : 1) * Math.Cos(t));
        var least = Enumerable.Range(0, 200000).Min(k =>
        {
            var (sine, cosine) = Math.SinCos(k * Math.PI / 200000);
            return Math.Acos(Math.Abs((ray.X * cosine) + (ray.Y * -Math.Sin(b) * sine) + (ray.Z * Math.Cos(b) * sine)));
        });
        SkewedRay.OnFace(new Angle(angle), new Angle(skew), new Angle(face), upwards).Radians.Should().BeApproximately((Math.PI / 2) - least, 1e-6);
    }

    [Fact]
    public void The_angle_in_the_section_is_that_of_the_vector_s_shadow()
    {
        var (t, s) = (63 * Degree, 17 * Degree);
        SkewedRay.InSection(new Angle(63), new Angle(17)).Radians.Should().BeApproximately(Math.Atan2(Math.Sin(t) * Math.Cos(s), Math.Cos(t)), 1e-12);
        Given.Deg(63).Degrees.Should().Be(63);
    }
}
