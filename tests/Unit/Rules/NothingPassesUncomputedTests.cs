using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>What cannot be computed, or rests on something nobody knows, must never look like something that passed.</summary>
public sealed class NothingPassesUncomputedTests
{
    [Fact]
    public void A_wedge_of_an_unknown_material_is_told_where_the_technique_rests_on_it()
    {
        var run = House.Check(House.Base.Edit(House.Pool, "fits: [pa-5-32]\n    material: cross-linked-polystyrene", "fits: [pa-5-32]\n    material: unobtainium"));
        run.Findings.Should().NotBeEmpty().And.OnlyContain(found => found.Finding.Rule == "unknown-reference");
        run.Findings.Select(found => House.Marked(run, found.Finding)).Should().Contain("w-36-flat");
    }

    [Fact]
    public void A_wedge_without_its_first_element_is_not_checked_in_the_technique()
    {
        var run = House.Check(House.Base.Edit(House.Pool, "    first-element: {height: 5 mm, behind-front: 28 mm}\n", ""));
        run.Findings.Select(found => found.Finding.Rule).Distinct().Should().BeEquivalentTo("missing-key", "not-checked");
        run.Findings.Where(found => found.Finding.Rule == "not-checked").Should().OnlyContain(found => House.Marked(run, found.Finding) == "w-36-flat");
    }

    [Fact]
    public void A_block_of_an_unknown_material_is_told()
    {
        var run = House.Check(House.Base.Edit(House.Pool, "  - id: block-10\n    material: carbon-steel", "  - id: block-10\n    material: unobtainium"));
        var (finding, marked) = House.Only(run);
        finding.Rule.Should().Be("unknown-reference");
        marked.Should().Be("block-10");
    }

    [Fact]
    public void A_hole_below_the_block_spans_nothing()
    {
        var pool = House.Base.Edit(House.Pool, "diameter: 1.5 mm, depth: 8 mm", "diameter: 1.5 mm, depth: 40 mm");
        var run = House.Check(pool.Edit(House.Floor, "reflectors: [sdh-2, sdh-5, sdh-8]", "reflectors: [sdh-8]"));
        run.Findings.Should().NotBeEmpty().And.OnlyContain(found => found.Finding.Rule == "reference-does-not-span");
    }

    [Fact]
    public void A_dual_probe_is_judged_by_where_its_halves_meet()
    {
        Rules("4 mm").Should().BeEmpty();
        Rules("40 mm").Should().Contain("volume-not-covered").And.NotContain("not-checked");

        static IEnumerable<string> Rules(string separation) => House.Check(House.Base
            .Edit(House.Pool, "{id: pa-5-32, kind: phased-array", "{id: pa-5-32, separation: " + separation + ", kind: dual-phased-array")
            .Edit(House.Pool, "    angle: 36 deg\n", "    angle: 36 deg\n    roof-angle: 1 deg\n")).Findings.Select(found => found.Finding.Rule);
    }

    [Fact]
    public void How_the_grains_of_an_austenitic_weld_bend_beams_is_not_checked_and_said_once()
    {
        var run = House.Check(House.Base.Edit(House.Floor, "material: carbon-steel", "material: austenitic-stainless-steel"));
        var finding = run.Findings.Where(found => found.Finding.Rule == "not-checked").Should().ContainSingle().Subject.Finding;
        finding.At.Should().Be("component/material");
        finding.Severity.Should().Be(TechLint.Rules.Findings.Severity.Warning);
        finding.Message.Should().Contain("grains");
    }

    [Fact]
    public void A_dual_probe_without_a_roof_is_not_checked()
    {
        var run = House.Check(House.Base.Edit(House.Pool, "{id: pa-5-32, kind: phased-array", "{id: pa-5-32, separation: 4 mm, kind: dual-phased-array"));
        run.Findings.Should().NotBeEmpty().And.OnlyContain(found => found.Finding.Rule == "not-checked");
    }

    [Fact]
    public void A_technique_is_no_equipment_library()
    {
        var run = House.Check(House.Base.Edit(House.Floor, "pool.equipment.yaml", "girth.technique.yaml"));
        var (finding, _) = House.Only(run);
        finding.Rule.Should().Be("library-not-found");
        finding.Message.Should().Contain("no equipment library");
    }

    [Fact]
    public void A_probe_moved_by_hand_is_not_checked()
    {
        var run = House.Check(House.Base.Edit(House.Floor, "    frame: frame-four\n", "    recording: none\n    movement: {across: {from: 13 mm, to: 70 mm}, line-spacing: 5 mm}\n"));
        var (finding, marked) = House.Only(run);
        finding.Rule.Should().Be("not-checked");
        marked.Should().Be("movement");
    }

    [Theory]
    [InlineData("legs: [1, 1000000000]", "1000000000")]
    [InlineData("legs: [1, 10]", "10")]
    public void A_leg_beyond_all_sense_is_one_finding(string legs, string expected)
    {
        var run = House.Check(House.Base.Edit(House.Floor, "legs: [1, 2], window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right", legs + ", window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right"));
        var (finding, marked) = House.Only(run);
        finding.Rule.Should().Be("wrong-value");
        marked.Should().Be(expected);
    }

    [Fact]
    public void A_thickness_that_is_none_is_one_finding() =>
        House.Only(House.Check(House.Base.Edit(House.Girth, "  thickness: 12.7 mm", "  thickness: thick"))).Finding.Rule.Should().Be("wrong-value");
}
