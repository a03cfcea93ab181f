using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Rays;

public sealed class SectionRaysTests
{
    private const double Degree = Math.PI / 180;

    [Fact]
    public void A_ray_from_outside_is_the_ray_from_inside_run_backwards() =>
        Gen.Select(Gen.Double[60, 2000], Gen.Double[0.02, 0.2], Gen.Double[1, 75]).Sample((diameter, share, degrees) =>
        {
            var wall = diameter * share;
            var outside = SectionRays.FromOutside(wall, diameter);
            var angle = Math.Min(degrees * Degree, outside.GreatestReachingAngle * 0.999);
            outside.TryReach(angle, wall, 1, out var advance, out var path).Should().BeTrue();

            var inside = SectionRays.FromInside(wall, diameter);
            inside.TryReach(outside.IncidenceAtEndOf(angle, 1), wall, 1, out var back, out var backPath).Should().BeTrue();

            backPath.Should().BeApproximately(path, path * 1e-7);
            (back / inside.ScanRadius).Should().BeApproximately(advance / outside.ScanRadius, 1e-7);
            inside.IncidenceAtEndOf(outside.IncidenceAtEndOf(angle, 1), 1).Should().BeApproximately(angle, 1e-7);
        });

    [Fact]
    public void A_ray_is_a_straight_line_of_its_own_length() =>
        Gen.Select(Gen.Double[80, 3000], Gen.Double[1, 80], Gen.Double[0, 1], Gen.Bool).Sample((diameter, degrees, share, fromOutside) =>
        {
            const double Wall = 9;
            // Less than a picometre below the surface there is no way to speak of.
            if (share * Wall < 1e-9) return;
            var section = fromOutside ? SectionRays.FromOutside(Wall, diameter) : SectionRays.FromInside(Wall, diameter);
            if (!section.TryReach(degrees * Degree, share * Wall, 1, out var advance, out var path)) return;
            new SectionFrame(section).TryLine(-5, -5 + advance, share * Wall, out var length, out var angle).Should().BeTrue();
            length.Should().BeApproximately(path, 1e-6);
            if (path > 1e-3) angle.Should().BeApproximately(degrees * Degree, 1e-6);
        });

    [Fact]
    public void A_straight_ray_down_has_no_advance_and_no_division_by_zero()
    {
        SectionRays.FromOutside(10, 100).TryReach(0, 10, 1, out var advance, out var path).Should().BeTrue();
        advance.Should().Be(0);
        path.Should().Be(10);
    }

    [Fact]
    public void A_line_through_the_bore_does_not_run_through_the_part()
    {
        var frame = new SectionFrame(SectionRays.FromOutside(5, 100));
        frame.TryLine(-50, 50, 2, out _, out _).Should().BeFalse();
        frame.TryLine(-10, 10, 2, out _, out _).Should().BeTrue();

        // From inside the straight line between two places of the hollow surface leaves the metal at once.
        new SectionFrame(SectionRays.FromInside(5, 100)).TryLine(-10, 10, 0, out _, out _).Should().BeFalse();
    }
}
