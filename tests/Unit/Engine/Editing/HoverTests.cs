using FluentAssertions;
using TechLint.Engine;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Editing;

public sealed class HoverTests
{
    [Fact]
    public void A_limit_tells_its_value_conditions_source_basis_and_what_judges_it()
    {
        var set = SampleText.Of(SampleText.Owner, text => text.Replace(
            "- {at-least: 3 mm,", "- {when: {scan: sectorial, thickness: {from: 6 mm, to: 10 mm}}, at-least: 3 mm,", StringComparison.Ordinal));
        var text = At(set, "at-least: 3 mm", "at-least: 3");
        text.Should().Contain("at least 3 mm (scan sectorial; thickness 6 to 10 mm): Glenmarrow GM-SP-07, section 4 (owner)")
            .And.Contain("Judged by `probe-on-cap`").And.Contain("in`").And.NotContain("section 6");
        At(SampleText.Of(SampleText.Owner), "correction-extrapolation", "corr").Should().Contain("section 6").And.Contain("Judged by `reference-does-not-span`");
    }

    [Fact]
    public void What_a_set_inherits_stands_beside_its_own_limit()
    {
        var set = SampleText.Of(SampleText.Owner, text => text.Replace("from: iso-13588-level-b", "from: good-practice", StringComparison.Ordinal));
        At(set, "at-least: 3 mm", "at-least: 3").Should().Contain("inherited from good-practice: at least 2 mm").And.Contain("(common-practice)");
    }

    [Fact]
    public void A_requirement_set_named_in_a_technique_tells_title_standard_and_limits()
    {
        var text = At(SampleText.Of(SampleText.Technique), "glenmarrow-owner", "glen");
        text.Should().Contain("Glenmarrow Hydro, owner's specification").And.Contain("Glenmarrow GM-SP-07:2026").And.Contain("cap-clearance: at least 3 mm: Glenmarrow GM-SP-07, section 4 (owner)")
            .And.Contain("Never waived: `reference-missing`, `volume-not-covered`").And.Contain("inherited from iso-13588-level-b");
    }

    [Theory]
    [InlineData("index-offset: 34", "sector-left: exit points", "behind the front")]
    [InlineData("angles: {from: 40", "half skip 40 deg", "full skip", "wavelength", "near field")]
    [InlineData("aperture: {first: 1, count: 16", "active aperture 7.95 mm", "near field")]
    [InlineData("speed: 4", "greatest speed without losing lines", "in/s`")]
    [InlineData("thickness: {from: 1", "half skip", "coverage at worst")]
    [InlineData("scan: tofd", "separation", "beams cross at", "One of `sectorial`")]
    [InlineData("material: carbon", "longitudinal 5920 m/s, transverse 3255 m/s", "published")]
    [InlineData("probe: pa-5", "pitch: 0.5 mm")]
    public void A_number_tells_what_it_does(string upTo, params string[] expected) => At(SampleText.Of(SampleText.Technique), upTo).Should().ContainAll(expected);

    [Theory]
    [InlineData("frequency: 5 M", "wavelength in carbon-steel: 0.65 mm transverse", "1.18 mm longitudinal")]
    [InlineData("pitch: 0.5", "whole array: 15.95 mm")]
    [InlineData("angle: 36", "without steering: 55 deg transverse in carbon-steel", "no longitudinal wave")]
    public void A_number_of_a_library_tells_what_follows_from_it_alone(string upTo, params string[] expected) =>
        At(SampleText.Of(SampleText.Library), upTo).Should().ContainAll(expected);

    /// <summary>Sines by hand: 3255/2337 × sin 36 deg = 0.8187, whose arc sine is 54.95 deg; 5920/2337 × sin 36 deg = 1.489.</summary>
    [Fact]
    public void The_unsteered_angle_is_that_of_the_law_of_refraction()
    {
        var angle = Math.Asin(3255.0 / 2337 * Math.Sin(36 * Math.PI / 180)) * 180 / Math.PI;
        angle.Should().BeApproximately(54.95, 0.01);
    }

    [Fact]
    public void A_rule_named_in_a_waiver_or_in_the_settings_tells_its_meaning()
    {
        var technique = SampleText.Of(SampleText.Technique, text => text + "\nwaivers:\n  - {rule: grating-lobe, at: setups/seam}\n  - {rule: probe-on-cap, at: setups/seam}\n");
        At(technique, "rule: probe-on-cap", "rule: probe").Should().Contain("**probe-on-cap**");
        At(SampleText.Of("techlint.yaml", text => text + "\nrules:\n  probe-on-cap: {severity: note, reason: x}\n"), "  probe-on-cap", "  probe").Should().Contain("**probe-on-cap**");
    }

    /// <summary>Numbers that make no sense, everywhere: something is said or nothing, never NaN, never an exception.</summary>
    [Theory]
    [InlineData("0 mm")]
    [InlineData("-5 mm")]
    [InlineData("999999999 mm")]
    [InlineData("0 deg")]
    [InlineData("89.999 deg")]
    [InlineData("0 MHz")]
    [InlineData("x")]
    [InlineData("{")]
    public void Whatever_a_number_is_nothing_that_is_no_number_is_shown(string nonsense)
    {
        foreach (var file in new[] { SampleText.Technique, SampleText.Library, SampleText.Owner })
        {
            var original = SampleText.Of(file).Text;
            foreach (System.Text.RegularExpressions.Match number in System.Text.RegularExpressions.Regex.Matches(original, @"(?<=: )[0-9.]+ (mm|deg|MHz|m/s|us|%)"))
            {
                if (number.Index % 5 != 0) continue;
                var changed = SampleText.Of(file, text => text[..number.Index] + nonsense + text[(number.Index + number.Length)..]);
                foreach (var offset in new[] { number.Index, number.Index + 1, changed.Text.IndexOf("aperture", StringComparison.Ordinal), changed.Text.IndexOf("speed:", StringComparison.Ordinal) })
                {
                    var hover = Hover.At(changed.Snapshot, changed.Path, Math.Max(0, offset))?.Markdown ?? "";
                    hover.Should().NotContain("NaN").And.NotContain("∞").And.NotContain("Exception");
                }
            }
        }
    }

    private static string At(SampleText sample, string place, string upTo = "") => Hover.At(sample.Snapshot, sample.Path, sample.At(place, upTo))!.Markdown;
}
