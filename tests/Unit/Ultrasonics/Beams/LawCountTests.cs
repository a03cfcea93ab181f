using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Beams;

public sealed class LawCountTests
{
    [Theory]
    [InlineData(40, 70, 1, 31), InlineData(40, 70, 0.1, 301), InlineData(40, 70, 0.7, 44), InlineData(55, 55, 1, 2 - 1), InlineData(70, 40, 1, 31)]
    [InlineData(40, 41, 5, 2)]
    public void A_sweep_takes_both_ends_and_a_shortened_last_step(double from, double to, double step, int count)
    {
        var sweep = new AngleSweep(Given.Deg(from), Given.Deg(to), Given.Deg(step));
        LawCount.OfSweep(sweep).Should().Be(count);
        LawCount.AngleAt(sweep, 0).Degrees.Should().Be(from);
        LawCount.AngleAt(sweep, count - 1).Degrees.Should().Be(to);
        var angles = Enumerable.Range(0, count).Select(index => LawCount.AngleAt(sweep, index).Degrees).ToArray();
        angles.Should().OnlyHaveUniqueItems();
        if (to >= from) angles.Should().BeInAscendingOrder();
        else angles.Should().BeInDescendingOrder();
    }

    [Theory]
    [InlineData(0), InlineData(-1), InlineData(double.NaN), InlineData(1e-9), InlineData(1e-300)]
    public void A_step_that_leads_nowhere_gives_no_count(double step) =>
        LawCount.OfSweep(new AngleSweep(Given.Deg(40), Given.Deg(70), Given.Deg(step))).Should().BeNull();

    [Theory]
    [InlineData(1, 16, 32, 1, 17), InlineData(1, 16, 16, 1, 1), InlineData(1, 10, 32, 4, 6), InlineData(5, 16, 16, 0, 1)]
    public void A_walk_ends_with_its_last_element(int first, int count, int last, int step, int laws) => Walk(first, count, last, step).Should().Be(laws);

    [Theory]
    [InlineData(1, 16, 32, 0), InlineData(1, 16, int.MaxValue, 1), InlineData(int.MinValue, 1, int.MaxValue, 1)]
    public void A_walk_without_end_gives_no_count(int first, int count, int last, int step) => Walk(first, count, last, step).Should().BeNull();

    private static int? Walk(int first, int count, int last, int step) =>
        LawCount.Of(Given.Sector with { Scan = ScanKind.Linear, Aperture = new Aperture(first, count, last, step) }, Given.Array);
}
