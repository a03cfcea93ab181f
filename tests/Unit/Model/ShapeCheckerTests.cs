using FluentAssertions;
using TechLint.Model.Shape;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Model;

public class ShapeCheckerTests
{
    private const string Settings = "techlint: 1\nscope:\n  - {joint: shell seams, thickness: {from: 16 mm, to: 40 mm}, outside-diameter: 1400 mm}\n";

    [Theory]
    // One slip each in the sample technique: the text, what it becomes, and the one finding.
    [InlineData("form: pipe ", "form: pip ", "wrong-value [pip] pip | one of plate, pipe, vessel, tank, cone | pipe")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: 19.05 # or", "unit-missing [19.05] 19.05 | mm, in, um, cm, m, ft")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: {from: 18, to: 25 mm}  # or", "unit-missing [18] 18 | mm, in, um, cm, m, ft")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: 20 deg # or", "unit-wrong-kind [20 deg] 20 deg | a length | an angle")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: {from: 25 mm, to: 18 mm}  # or", "range-reversed [25 mm, to: 18 mm] 25 mm | 18 mm")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: {from: 18 mm}  # or", "missing-key [thickness] to | thickness")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: 12 in # or", "value-implausible [12 in] 12 in | walls of 1 mm to 300 mm")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: 0 mm # or", "wrong-value [0 mm] 0 mm | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: -18 mm # or", "wrong-value [-18 mm] -18 mm | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("thickness: {from: 18 mm, to: 25 mm}  # or", "thickness: 1,5 mm # or", "wrong-value [1,5 mm] 1,5 mm | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | 1.5 mm")]
    [InlineData("length: 6 m", "length: 10^300 mm", "wrong-value [10^300 mm] 10^300 mm | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("length: 6 m", "length: .inf", "wrong-value [.inf] .inf | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("length: 6 m", "length: NaN", "wrong-value [NaN] NaN | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("length: 6 m", "length: 1e300", "wrong-value [1e300] 1e300 | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("length: 6 m", "length: 6 Inches", "wrong-value [6 Inches] 6 Inches | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | 6 in")]
    [InlineData("length: 6 m", "length:", "wrong-value [length] nothing | a length greater than zero in mm, in, um, cm, m or ft, such as 19.05 mm | ")]
    [InlineData("length: 6 m", "lenght: 6 m", "unknown-key [lenght] lenght | length | joint, orientation, process, length, preparation, cap, root, heat-affected-zone")]
    [InlineData("joint: butt ", "joit: butt ", "unknown-key [joit] joit | joint | joint, orientation, process, length, preparation, cap, root, heat-affected-zone")]
    [InlineData("  orientation: longitudinal", "  #", "missing-key [weld] orientation | weld")]
    [InlineData("process: submerged-arc", "process: [submerged-arc]", "wrong-value [[submerged-arc]] a list | text | ")]
    [InlineData("cap: {width: 22 mm, height: 2 mm}", "cap: 22 mm", "wrong-value [22 mm] 22 mm | a group of keys such as width, height, centre | ")]
    [InlineData("cap: {width: 22 mm, height: 2 mm}", "cap: [22 mm, 2]", "wrong-value [[22 mm, 2]] a list | a group of keys such as width, height, centre | ")]
    [InlineData("date: 2026-10-05", "date: 2026-02-30", "wrong-value [2026-02-30] 2026-02-30 | a day of the calendar, such as 2026-10-05 | ")]
    [InlineData("to: 72 deg, step: 1 deg},\n         aperture: {first: 1, count: 16}, focus: {path: 60 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}\n      - {id: sector-right",
        "to: 120 deg, step: 1 deg},\n         aperture: {first: 1, count: 16}, focus: {path: 60 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}\n      - {id: sector-right",
        "wrong-value [120 deg] 120 deg | an angle from 0 to under 90 deg, such as 55 deg | ")]
    [InlineData("count: 16}, focus: {path: 60 mm}, legs: [1, 2]", "count: 0}, focus: {path: 60 mm}, legs: [1, 2]", "wrong-value [0] 0 | a whole number from 1 | ")]
    [InlineData("{id: contact-right, scan: coupling-monitor, from: 2, loss-at-most: 6 dB}", "{id: contact-left, scan: coupling-monitor, from: 2, loss-at-most: 6 dB}", "duplicate-id [contact-left] contact-left | beam")]
    [InlineData("{station: 4, probe: el-5-6,  wedge: w-60l, ", "{station: 3, probe: el-5-6,  wedge: w-60l, ", "duplicate-id [3] 3 | probe")]
    [InlineData("{id: contact-right, scan: coupling-monitor, from: 2,", "{id: contact-right, scan: coupling-monitor, from 2,", "unknown-key [from 2] from 2 | from | id, scan, from, aperture, window, averaging, loss-at-most, reference")]
    [InlineData("{id: contact-right, scan: coupling-monitor, from: 2,", "{id: contact-right, scan: coupling-monitr, from: 2,", "wrong-value [coupling-monitr] coupling-monitr | one of sectorial, linear, fixed, tofd, tandem, total-focusing, coupling-monitor, lamination | coupling-monitor")]
    [InlineData("speed: 50 mm/s", "speed: 50 m/s", "value-implausible [50 m/s] 50 m/s | scanning speeds of 0.1 mm/s to 1000 mm/s")]
    [InlineData("material: carbon-steel ", "material: Carbon Steel ", "wrong-value [Carbon Steel] Carbon Steel | a name that others refer to: small letters, digits, dots and hyphens, or a group of keys such as left, right | carbon-steel")]
    [InlineData("form: pipe  ", "form: plate ", "unknown-key [outside-diameter] outside-diameter |  | form, material, thickness, surface-temperature, scanning-surface, coating")]
    [InlineData("focus: {path: 60 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}\n      - {id: diff", "focus: {path: 60 mm, depth: 20 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}\n      - {id: diff",
        "wrong-value [depth] depth | only one of path, depth, across | ")]
    [InlineData("{shape: double-v,", "{shape: double-j,", "missing-key [preparation] bevelled-side | preparation")]
    [InlineData("outside-diameter: {from: 1400 mm, to: 1450 mm}", "outside-diameter: 30 mm", "wrong-value [30 mm] 30 mm | more than twice the thickness of 18 mm | ")]
    public void One_slip_is_one_finding_at_its_characters(string sound, string slip, string expected)
    {
        ShapeSamples.Technique.Should().Contain(sound);
        var at = ShapeSamples.Technique.IndexOf(sound, StringComparison.Ordinal);

        var problems = ShapeText.Problems(ShapeSamples.Technique.Remove(at, sound.Length).Insert(at, slip), FormatKind.Technique);

        problems.Should().Equal(expected);
    }

    [Theory]
    [InlineData("frequency: 5 MHz, bandwidth", "frequency: 50 MHz, bandwidth", "value-implausible [50 MHz]")]
    [InlineData("transverse: 3240 m/s", "transverse: 3240 mm/s", "value-implausible [3240 mm/s]")]
    [InlineData("longitudinal: 5920 m/s", "longitudinal: 5920 %", "unit-wrong-kind [5920 %]")]
    [InlineData(", angle: 36 deg", "", "missing-key [w-36-flat]")]
    [InlineData("index-point: {behind-front: 7 mm}, path: 8 mm, length: 18 mm, width: 14 mm, contour: flat", "path: 8 mm, length: 18 mm, width: 14 mm, contour: flat", "missing-key [w-60l]")]
    [InlineData("shape: round, diameter: 6 mm", "shape: round", "missing-key [el-5-6]")]
    [InlineData("form: pipe, outside-diameter: 323.9 mm, thickness: 12.7 mm", "form: pipe, outside-diameter: 20 mm, thickness: 12.7 mm", "wrong-value [20 mm]")]
    [InlineData("contour: flat,", "contour: round,", "wrong-value [round]")]
    public void One_slip_in_a_library_is_one_finding(string sound, string slip, string expected)
    {
        ShapeSamples.Equipment.Should().Contain(sound);
        var at = ShapeSamples.Equipment.IndexOf(sound, StringComparison.Ordinal);

        ShapeText.Places(ShapeSamples.Equipment.Remove(at, sound.Length).Insert(at, slip), FormatKind.Equipment).Should().Equal(expected);
    }

    [Theory]
    [InlineData("at-most: 1 mm", "at-most: 1e300", "wrong-value [1e300]")]
    [InlineData("at-most: 1 mm", "at-most: 3", null)]
    [InlineData("at-most: 1 mm", "at-most: 3 parsec", "wrong-value [3 parsec]")]
    [InlineData("at-most: 1 mm, source", "source", "missing-key [increment]")]
    [InlineData("scan: sectorial, thickness: {to: 10 mm}", "scan: [sectorial, linear], thickness: {to: 10 mm}", null)]
    [InlineData("scan: sectorial, thickness: {to: 10 mm}", "scan: [sectorial, sideways]", "wrong-value [sideways]")]
    [InlineData("  increment:", "  Increment:", "wrong-value [Increment]")]
    [InlineData("edition: 2019", "edition: true", "wrong-value [true]")]
    public void One_slip_in_a_set_is_one_finding(string sound, string slip, string? expected)
    {
        var at = ShapeSamples.Requirement.IndexOf(sound, StringComparison.Ordinal);

        var places = ShapeText.Places(ShapeSamples.Requirement.Remove(at, sound.Length).Insert(at, slip), FormatKind.Requirement);

        // A missing key of a list entry without an id is shown at the entry's first key.
        places.Should().Equal(expected is null ? [] : [expected.Replace("missing-key [increment]", "missing-key [when]", StringComparison.Ordinal)]);
    }

    [Theory]
    [InlineData("", "missing-key []")]
    [InlineData("# only a comment\n", "missing-key []")]
    [InlineData("just words", "wrong-value [just words]")]
    [InlineData("- techlint: 1\n", "wrong-value [- techlint: 1]")]
    [InlineData("techlint: 2\n", "wrong-value [2]")]
    [InlineData("techlint: \"1\"\n", "wrong-value [\"1\"]")]
    [InlineData("techlint: 1\nscope: []\n", null)]
    [InlineData("techlint: 1\nrules: {grating-lobe: nots}\n", "wrong-value [nots]")]
    [InlineData("techlint: 1\nrules: {grating-lobe: off}\n", null)]
    [InlineData("techlint: 1\nrules: {grating-lobe: {severity: off}}\n", "missing-key [grating-lobe]")]
    [InlineData("techlint: 1\npaths: [{match: a, check: 0, reason: b}]\n", "wrong-value [0]")]
    [InlineData("techlint: 1\n5: x\n", "unknown-key [5]")]
    [InlineData("? [a, b]\n: x\ntechlint: 1\n", null, true)]
    public void A_whole_text_of_the_wrong_kind_is_one_finding(string text, string? expected, bool fromReader = false)
    {
        var places = ShapeText.Places(text, FormatKind.Settings);
        if (fromReader) places.Should().ContainSingle();
        else places.Should().Equal(expected is null ? [] : [expected]);
    }

    [Theory]
    [InlineData("techlint: 1\nscope:\n  - joint: seams\n    thickness 20 mm\n")]
    [InlineData("techlint: 1\nscope:\n  - {joint: seams, thickness 20 mm}\n")]
    [InlineData("techlint: 1\nscope:\n  - joint: seams\n      thickness 20 mm\n    orientation: helical\n")]
    [InlineData("techlint: 1\nscope:\n  - {joint: seams, thickness: {from: 16 mm, to: 40 mm\n")]
    [InlineData("techlint: 1\nscope:\n  - {joint: seams, thickness: *nowhere}\n")]
    [InlineData("techlint: 1\nscope:\n  - {joint: seams, thickness: 20 mm, thickness: 25 mm}\n")]
    [InlineData("techlint 1\n")]
    public void Damage_is_named_once_and_hides_its_consequences(string text) =>
        ShapeText.Places(text, FormatKind.Settings).Should().ContainSingle();

    [Fact]
    public void A_value_that_ran_on_over_its_line_is_one_wrong_value()
    {
        var text = "techlint: 1\nscope:\n  - joint: seams\n    orientation: helical\n      thickness 20 mm\n";

        ShapeText.Places(text, FormatKind.Settings).Should().Equal("wrong-value [helical\n      thickness 20 mm]");
    }

    [Theory]
    [InlineData(FormatKind.Technique)]
    [InlineData(FormatKind.Equipment)]
    [InlineData(FormatKind.Requirement)]
    [InlineData(FormatKind.Settings)]
    public void A_text_cut_off_anywhere_is_read_without_a_throw_and_every_problem_lies_within_it(FormatKind kind)
    {
        var sample = ShapeSamples.Of(kind);
        for (var length = 0; length < sample.Length; length += 11)
        {
            foreach (var text in new[] { sample[..length], sample[length..], sample.Remove(length, Math.Min(3, sample.Length - length)) })
            {
                var tree = ShapeText.Read(text);
                ShapeChecker.Check(tree, kind).Problems.All(problem => problem.Span.Start >= 0 && problem.Span.Length >= 0 && problem.Span.End <= text.Length)
                    .Should().BeTrue();
            }
        }
    }

    [Fact]
    public void A_broken_line_does_not_hide_other_mistakes()
    {
        var places = ShapeText.Places("techlint: 1\nscope:\n  - joint: seams\n    thickness 20 mm\n    outside-diameter: 1400\nas-of: tomorrow\n", FormatKind.Settings);

        places.Should().Contain("unit-missing [1400]").And.Contain("wrong-value [tomorrow]");
    }

    [Fact]
    public void An_alias_is_followed_and_its_mistake_told_once()
    {
        var text = "techlint: 1\nscope:\n  - &s {joint: seams, thickness: &t 20}\n  - {joint: others, thickness: *t}\n  - *s\n";

        ShapeText.Problems(text, FormatKind.Settings).Should().Equal("unit-missing [20] 20 | mm, in, um, cm, m, ft");
    }

    [Fact]
    public void A_value_that_fits_its_anchor_but_not_its_alias_is_wrong_at_the_alias()
    {
        var tree = ShapeText.Read("techlint: 1\nas-of: &d 2026-11-24\nscope:\n  - {joint: seams, thickness: *d}\n");

        var check = ShapeChecker.Check(tree, FormatKind.Settings);

        check.Problems.Should().ContainSingle().Which.Code.Should().Be("wrong-value");
        tree.Source.Slice(check.Problems[0].Span).ToString().Should().Be("*d");
        var root = (MappingNode)tree.Root!;
        check.IsBroken(root.Find("as-of")!.Value).Should().BeFalse();
        check.IsBroken(((MappingNode)((SequenceNode)root.Find("scope")!.Value).Items[0]).Find("thickness")!.Value).Should().BeTrue();
    }

    [Fact]
    public void Merged_keys_count_and_their_mistakes_are_told_once()
    {
        ShapeText.Problems("techlint: 1\nscope:\n  - &s {joint: seams, thickness: 20 mm}\n  - {<<: *s, outside-diameter: 1400 mm}\n", FormatKind.Settings).Should().BeEmpty();
        ShapeText.Places("techlint: 1\nscope:\n  - &s {joint: seams, thickness: 20, extra: 1}\n  - {<<: *s}\n  - {<<: [*s]}\n", FormatKind.Settings)
            .Should().Equal("unit-missing [20]", "unknown-key [extra]");
        ShapeText.Places("techlint: 1\nscope:\n  - {joint: seams, thickness: 20 mm, <<: 5}\n", FormatKind.Settings).Should().Equal("wrong-value [5]");
    }

    [Fact]
    public void A_mistyped_key_is_broken_and_not_missing_to_who_asks_for_it()
    {
        var tree = ShapeText.Read(Settings.Replace("thickness", "thicknes", StringComparison.Ordinal));
        var scope = (MappingNode)((SequenceNode)((MappingNode)tree.Root!).Find("scope")!.Value).Items[0];

        var check = ShapeChecker.Check(tree, FormatKind.Settings);

        check.Problems.Should().ContainSingle();
        check.IsKeyBroken(scope, "thickness").Should().BeTrue();
        check.ProblemOf(scope, "thickness").Should().Be(check.Problems[0]);
        check.IsKeyBroken(scope, "orientation").Should().BeFalse();
    }

    [Fact]
    public void An_implausible_value_is_told_and_not_read()
    {
        var tree = ShapeText.Read(Settings.Replace("1400 mm", "1400 ft", StringComparison.Ordinal));
        var scope = (MappingNode)((SequenceNode)((MappingNode)tree.Root!).Find("scope")!.Value).Items[0];

        var check = ShapeChecker.Check(tree, FormatKind.Settings);

        check.Problems.Should().ContainSingle().Which.Code.Should().Be("value-implausible");
        check.IsBroken(scope.Find("outside-diameter")!.Value).Should().BeTrue("what rests on a slip of the pen is not worth a second finding");
    }

    [Fact]
    public void Manual_scanning_needs_a_movement_and_no_frame()
    {
        var manual = ShapeSamples.Technique.Replace("    frame: frame-four\n", "    recording: none\n    movement: {across: {from: -40 mm, to: 40 mm}, line-spacing: 5 mm}\n", StringComparison.Ordinal)
            .Replace("left,  index-offset: 26 mm}", "left}", StringComparison.Ordinal)
            .Replace("right, index-offset: 26 mm}", "right}", StringComparison.Ordinal);

        ShapeText.Problems(manual, FormatKind.Technique).Should().BeEmpty();
        ShapeText.Places(manual.Replace("recording: none", "recording: encoded", StringComparison.Ordinal), FormatKind.Technique)
            .Should().Equal("unknown-key [movement]", "missing-key [1]", "missing-key [2]");
    }

    [Theory]
    [InlineData("thicknes", "thickness")]
    [InlineData("Thickness", "thickness")]
    [InlineData("htickness", "thickness")]
    [InlineData("diameter", "outside-diameter")]
    [InlineData("inside-diameter", null)]
    [InlineData("form", null)]
    [InlineData("frm", "from")]
    [InlineData("", null)]
    [InlineData("from 3", "from")]
    [InlineData("colour", null)]
    public void The_nearest_name_is_the_one_meant_or_none(string text, string? expected)
    {
        // "form" for "from" is two letters swapped: meant where only "from" is known.
        string[] names = text == "form" ? ["thickness", "side"] : ["thickness", "outside-diameter", "from", "side"];

        NearestName.Of(text, names).Should().Be(expected);
    }

    [Theory]
    [InlineData("from", "form", 1)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("abc", "abc", 0)]
    [InlineData("ca", "abc", 3)]
    public void The_distance_counts_edits_and_swaps(string left, string right, int expected) => NearestName.Distance(left, right).Should().Be(expected);
}
