using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Beams;

public sealed class FocusPathTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(10, 20), InlineData(20, 40), InlineData(30, 60)]
    public void A_depth_unfolds_over_the_legs_of_a_plate(double depth, double path) => Path(SectionRays.Flat(20), FocusKind.Depth, depth).Should().BeApproximately(path, 1e-9);

    [Theory]
    [InlineData(10), InlineData(60)]
    public void A_line_across_a_plate_is_met_where_the_ray_gets_there(double across) =>
        Path(SectionRays.Flat(20), FocusKind.Across, across).Should().BeApproximately((across + 30) / Math.Sin(60 * Degree), 1e-9);

    [Theory]
    [InlineData(-31), InlineData(-1000)]
    public void A_line_behind_the_beam_is_no_focus(double across) => Path(SectionRays.Flat(20), FocusKind.Across, across).Should().Be(0);

    [Theory]
    [InlineData(-20.0, true), InlineData(0.0, true), InlineData(13.0, true), InlineData(40.0, true), InlineData(0.0, false), InlineData(20.0, false)]
    public void A_line_around_a_pipe_is_met_in_the_leg_that_gets_there(double across, bool outside)
    {
        var section = outside ? SectionRays.FromOutside(12.7, 508) : SectionRays.FromInside(12.7, 508);
        var path = Path(section, FocusKind.Across, across);

        // Walk the ray leg by leg: at that path its advance is the line's.
        Advance(section, path).Should().BeApproximately(across + 30, 1e-6);
    }

    [Fact]
    public void A_stated_path_is_shortened_into_the_section() =>
        FocusPath.InSection(SectionRays.Flat(20), new Focus(FocusKind.Path, Given.Mm(50)), 1, 0, 1, 0.9).Should().Be(45);

    private static double Path(SectionRays section, FocusKind kind, double distance) =>
        FocusPath.InSection(section, new Focus(kind, Given.Mm(distance)), 60 * Degree, -30, 1, 1);

    private static double Advance(SectionRays section, double path)
    {
        for (var leg = 1; ; leg++)
        {
            section.TryReach(60 * Degree, (leg & 1) == 1 ? section.Thickness : 0, leg, out _, out var end).Should().BeTrue();
            if (end < path) continue;
            var (low, high) = (0.0, section.Thickness);
            for (var step = 0; step < 60; step++)
            {
                var middle = (low + high) / 2;
                section.TryReach(60 * Degree, middle, leg, out _, out var reached);
                if (reached < path == ((leg & 1) == 1)) low = middle;
                else high = middle;
            }

            section.TryReach(60 * Degree, low, leg, out var advance, out _);
            return advance;
        }
    }
}
