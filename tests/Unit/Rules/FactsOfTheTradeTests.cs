using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>What every practitioner knows of frames and offsets. Common practice, no source.</summary>
public sealed class FactsOfTheTradeTests
{
    /// <summary>Long seams from 6 in to flat; girth welds with two probes from 4.5 in, with four from 10 in.</summary>
    private static TextStore Shop => House.Base
        .Edit(House.Pool, "outside-diameter: {from: 180 mm}", "outside-diameter: {from: 6 in}")
        .Edit(House.Pool, "outside-diameter: {from: 88.9 mm}", "outside-diameter: {from: 4.5 in}")
        .Edit(House.Pool, "probes: 4, outside-diameter: {from: 323.9 mm}", "probes: 4, outside-diameter: {from: 10 in}");

    [Theory]
    [InlineData(4, "254 mm", true)]
    [InlineData(4, "10 in", true)]
    [InlineData(4, "253.99 mm", false)]
    [InlineData(4, "9.999 in", false)]
    [InlineData(2, "114.3 mm", true)]
    [InlineData(2, "4.5 in", true)]
    [InlineData(2, "4 1/2 in", true)]
    [InlineData(2, "114.29 mm", false)]
    [InlineData(2, "4.499 in", false)]
    public void Around_a_girth_weld_two_probes_serve_from_four_and_a_half_inches_and_four_from_ten(int probes, string diameter, bool serves)
    {
        var store = Shop.Edit(House.Girth, "  outside-diameter: 323.9 mm", "  outside-diameter: " + diameter);
        if (probes == 2)
        {
            store = store
                .Edit(House.Girth, "      - {station: 3, probe: el-10-3, wedge: w-70l, side: left, index-offset: 14 mm}\n", "")
                .Edit(House.Girth, "      - {station: 4, probe: el-10-3, wedge: w-70l, side: right, index-offset: 14 mm}\n", "");
        }

        Rules(store).Contains("probe-count-over-diameter-limit").Should().Be(!serves);
    }

    [Theory]
    [InlineData("152.4 mm", true)]
    [InlineData("6 in", true)]
    [InlineData("152.39 mm", false)]
    [InlineData("5.999 in", false)]
    public void A_frame_for_long_seams_serves_from_six_inches_to_flat(string diameter, bool serves)
    {
        var store = Shop.Edit(House.Floor, "  form: plate", "  form: pipe\n  outside-diameter: {from: " + diameter + "}");
        Rules(store).Contains("probe-count-over-diameter-limit").Should().Be(!serves);
    }

    [Fact]
    public void The_index_offset_is_reset_when_the_thickness_changes()
    {
        var store = House.Base
            .Edit(House.Floor, "material: carbon-steel\n  thickness: 10 mm", "material: carbon-steel\n  thickness: {from: 10 mm, to: 26 mm}")
            .Edit(House.Floor, "for: {thickness: 10 mm}", "for: {thickness: {from: 10 mm, to: 26 mm}}")
            .Edit(House.Floor, "block: block-10, reflectors: [sdh-2, sdh-5, sdh-8]", "block: block-25, reflectors: [sdh-4, sdh-12, sdh-21]");
        Rules(store).Should().Equal("index-offset-against-thickness");
    }

    [Fact]
    public void Four_probes_mix_sectorial_tofd_and_total_focusing_on_one_frame()
    {
        var store = House.Base.Edit(
            House.Girth, "      - {id: contact-left,",
            "      - {id: image, scan: total-focusing, from: 1, imaging-path: TT-T, capture: full, grid: 0.3 mm,\n"
            + "         region: {across: {from: -10 mm, to: 10 mm}, depth: {from: 0 mm, to: 12.7 mm}}, reference: holes}\n      - {id: contact-left,");
        Rules(store).Should().BeEmpty();
    }

    private static string[] Rules(TextStore store) => [.. House.Check(store).Findings.Select(found => found.Finding.Rule)];
}
