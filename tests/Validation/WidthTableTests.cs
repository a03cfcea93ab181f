using System.Globalization;
using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>docs/physics-fields.md tells how far the simple width is off: its tables are worked out anew, and its bounds are held in both directions.</summary>
public sealed class WidthTableTests
{
    private const string Begin = "<!-- widths: made by WidthTables in tests/Validation, held by WidthTableTests -->";
    private const string End = "<!-- end of widths -->";

    [Fact]
    public void The_page_s_tables_are_what_comes_out()
    {
        var page = File.ReadAllText(Path.Combine(ValidationRun.Root(), "docs", "physics-fields.md")).Split(Begin, 2)[1].Split(End, 2)[0].Trim().Split('\n');
        var fresh = WidthTables.Page();
        var made = fresh.Trim().Split('\n');
        page.Should().HaveSameCount(made, $"put this between the marks:\n{fresh}");
        foreach (var (stated, now) in page.Zip(made))
        {
            var (before, after) = (stated.Split('|'), now.Split('|'));
            before.Should().HaveSameCount(after, $"put this between the marks:\n{fresh}");
            foreach (var (one, other) in before.Zip(after))
            {
                // The last digit may turn with another machine's rounding.
                if (Number(one) is { } was && Number(other) is { } @is) @is.Should().BeApproximately(was, 0.011, $"put this between the marks:\n{fresh}");
                else one.Trim().Should().Be(other.Trim(), $"put this between the marks:\n{fresh}");
            }
        }
    }

    [Theory]
    [InlineData(1.0, 0.32, 0.36), InlineData(1.2, 0.74, 0.78), InlineData(1.5, 0.86, 0.90), InlineData(2.0, 0.92, 0.96), InlineData(3.0, 0.96, 0.99), InlineData(5.0, 0.97, 1.0)]
    public void Unfocused_in_one_medium_it_is_narrow_by_so_much(double nearFields, double least, double most) =>
        WidthTables.Unfocused().Where(place => place.At == nearFields).Should().OnlyContain(place => place.Ratio >= least && place.Ratio <= most);

    [Theory]
    [InlineData(1.2, 0.55, 0.70), InlineData(1.5, 0.74, 0.85), InlineData(2.0, 0.85, 0.92), InlineData(3.0, 0.9, 0.96), InlineData(5.0, 0.93, 0.98)]
    public void Unfocused_through_the_wedge_it_is_narrow_by_so_much(double nearFields, double least, double most) =>
        WidthTables.ThroughWedge(0).Where(place => place.At == nearFields && !double.IsNaN(place.Ratio)).Should().NotBeEmpty()
            .And.OnlyContain(place => place.Ratio >= least && place.Ratio <= most);

    [Fact]
    public void In_one_medium_it_is_never_wide_by_more_than_2_percent() =>
        WidthTables.Unfocused().Concat(WidthTables.Foci.SelectMany(WidthTables.Focused)).Where(place => !double.IsNaN(place.Ratio))
            .Should().OnlyContain(place => place.Ratio <= 1.02);

    [Fact]
    public void Through_the_wedge_it_is_wide_by_12_percent_at_most_and_only_focused_near_the_wedge()
    {
        var focused = WidthTables.Foci.SelectMany(WidthTables.ThroughWedge).Where(place => !double.IsNaN(place.Ratio)).ToArray();
        focused.Should().OnlyContain(place => place.Ratio <= 1.125);
        focused.Should().Contain(place => place.Ratio > 1.05, "the page says that there are such places");
        focused.Where(place => place.Ratio > 1.05).Should().OnlyContain(place => place.Apertures <= 3);
        WidthTables.ThroughWedge(0).Where(place => !double.IsNaN(place.Ratio)).Should().OnlyContain(place => place.Ratio <= 1);
    }

    private static double? Number(string cell) => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}
