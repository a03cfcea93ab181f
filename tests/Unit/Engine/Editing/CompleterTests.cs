using System.Text.RegularExpressions;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Engine.Completing;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Editing;

public sealed partial class CompleterTests
{
    private const string Waivers = "\nwaivers:\n  - {rule: volume-not-covered, at: ";

    [Theory]
    [InlineData("", "setups", "setups/seam", "references/side-drilled", "component")]
    [InlineData("setups/", "setups/seam")]
    [InlineData("setups/seam/", "setups/seam/probes", "setups/seam/beams", "setups/seam/acquisition")]
    [InlineData("setups/seam/be", "setups/seam/beams", "setups/seam/probes")]
    [InlineData("setups/seam/probes/", "setups/seam/probes/1", "setups/seam/probes/4")]
    [InlineData("setups/seam/beams/sector-left/angles/", "setups/seam/beams/sector-left/angles/from", "setups/seam/beams/sector-left/angles/step")]
    [InlineData("weld/preparation/outer/", "weld/preparation/outer/included-angle")]
    public void The_place_of_a_waiver_is_completed_segment_by_segment(string written, params string[] expected)
    {
        var sample = SampleText.Of(SampleText.Technique, text => text + Waivers + written);
        var found = Completer.At(sample.Snapshot, sample.Path, sample.Text.Length)!;
        found.Choices.Select(choice => choice.Label).Should().Contain(expected).And.NotContain("waivers");
        sample.Text.Substring(found.Replaced.Start, found.Replaced.Length).Should().Be(written);
    }

    [Theory]
    [InlineData("run-on: 50 mm", "run-on: 50", "50 mm", "50mm")]
    [InlineData("run-on: 50 mm", "run-on: 50 ", "50 mm", "50 mm")]
    [InlineData("run-on: 50 mm", "run-on: 50m", "50 mm", "50mm")]
    [InlineData("run-on: 50 mm", "run-on: 1 1/2", "1 1/2 in", "1 1/2in")]
    public void Units_are_offered_behind_a_number_with_a_space_and_without(string old, string typed, string label, string filter)
    {
        var (found, text) = Typed(old, typed);
        var choice = found.Choices.Should().ContainSingle(one => one.Label == label).Subject;
        choice.Filter.Should().Be(filter).And.StartWith(text.Substring(found.Replaced.Start, found.Replaced.Length).TrimEnd(' '));
    }

    [Theory]
    [InlineData("date: 2026-10-05", "date: ", "2026-11-24")]
    [InlineData("valid-until: 2028-04-30", "valid-until: ", "2027-11-24")]
    [InlineData("until: 2028-04-30", "until: 2", "2026-11-24")]
    public void Days_come_from_the_day_of_judging(string old, string typed, string expected) =>
        Typed(old, typed).Found.Choices.Select(choice => choice.Label).Should().Contain(expected);

    [Theory]
    [InlineData("  sides: both\n", "  \n", 2, "sides")]
    [InlineData("  sides: both\n", "\n", 0, "examination", false)]
    [InlineData("      averaging: 1\n", "      \n", 6, "averaging")]
    [InlineData("    frame: frame-four\n", "    \n", 4, "frame")]
    public void An_empty_line_is_completed_at_its_own_level(string old, string typed, int column, string key, bool offers = true)
    {
        var sample = SampleText.Of(SampleText.Technique, text => text.Replace(old, typed, StringComparison.Ordinal));
        var original = SampleText.Of(SampleText.Technique).Text;
        var labels = Completer.At(sample.Snapshot, sample.Path, original.IndexOf(old, StringComparison.Ordinal) + column)?.Choices.Select(choice => choice.Label) ?? [];
        if (offers) labels.Should().Contain(key);
        else labels.Should().NotContain(key, "it is there already");
    }

    [Theory]
    [InlineData("requirements: [iso-13588-level-b, iso-10863-level-b, glenmarrow-owner]", "requirements: [iso-13588-level-b, ", "glenmarrow-owner")]
    [InlineData("reflectors: [", "reflectors: [", "sdh-4")]
    [InlineData("wave: transverse", "wave: ", "transverse")]
    [InlineData("beams:\n", "beams:\n      - {id: new, scan: tofd, tr", "transmit")]
    [InlineData("beams:\n", "beams:\n      - {id: new, scan: tofd, transmit: ", "3")]
    public void Lists_braces_and_line_ends_are_completed(string old, string typed, string expected) =>
        Typed(old, typed).Found.Choices.Select(choice => choice.Label).Should().Contain(expected);

    /// <summary>A snippet is LSP 3.17's: a dollar begins a stop, each stop has its own number; without its stops it is what YAML reads.</summary>
    [Fact]
    public void Every_snippet_is_sound()
    {
        var seen = 0;
        foreach (var (file, insert) in new[] { (SampleText.Technique, "\n"), (SampleText.Library, "\n"), (SampleText.Technique, "setups:\n  - id: a\n    "), (SampleText.Technique, "setups:\n  - id: a\n    beams:\n      - {scan: sectorial, "), (SampleText.Technique, "component:\n  ") })
        {
            var sample = SampleText.Of(file, _ => insert);
            foreach (var choice in Completer.At(sample.Snapshot, sample.Path, insert.Length)!.Choices.Where(choice => choice.Snippet is not null))
            {
                seen++;
                var stops = Stop().Matches(choice.Snippet!).Select(match => match.Groups[1].Value).ToArray();
                stops.Should().OnlyHaveUniqueItems();
                Stop().Replace(choice.Snippet!, "").Replace("\\}", "", StringComparison.Ordinal).Should().NotContain("$").And.NotContain("\\");
                var text = insert + Stop().Replace(choice.Snippet!, "x").Replace("\\}", "}", StringComparison.Ordinal) + (insert.Contains('{', StringComparison.Ordinal) ? "}\n" : "\n");
                YamlReader.Read(new SourceText(file, text)).Problems.Where(problem => problem.Code == "yaml-syntax").Should().BeEmpty(choice.Snippet);
            }
        }

        seen.Should().BeGreaterThan(20);
    }

    /// <summary>A long text is completed from what is near the caret; that gives what the whole gives.</summary>
    [Fact]
    public void A_long_text_offers_at_every_place_what_a_short_one_does()
    {
        var text = SampleText.Of(SampleText.Technique).Text;
        var start = text.IndexOf("  - id: seam", StringComparison.Ordinal);
        var setup = text[start..text.IndexOf("references:", StringComparison.Ordinal)].TrimEnd() + "\n";
        string Other(int i) => setup.Replace("id: seam", "id: other-" + i, StringComparison.Ordinal);
        var before = string.Concat(Enumerable.Range(0, 4).Select(Other));
        var after = string.Concat(Enumerable.Range(4, 4).Select(Other));
        var longer = SampleText.Of(SampleText.Technique, _ => text[..start] + before + setup + after + text[(start + setup.Length)..]);
        var shorter = SampleText.Of(SampleText.Technique, _ => text[..start] + setup + text[(start + setup.Length)..]);
        var compared = 0;
        for (var offset = start; offset < start + setup.Length; offset += 5)
        {
            var (one, other) = (Completer.At(shorter.Snapshot, shorter.Path, offset), Completer.At(longer.Snapshot, longer.Path, offset + before.Length));
            (other?.Choices.Select(choice => choice.Label) ?? []).Should().Equal(one?.Choices.Select(choice => choice.Label) ?? []);
            if (one is null) continue;
            (other!.Replaced.Start - before.Length).Should().Be(one.Replaced.Start);
            compared++;
        }

        compared.Should().BeGreaterThan(100);
    }

    private static (CompletionChoices Found, string Text) Typed(string old, string typed)
    {
        var sample = SampleText.Of(SampleText.Technique, text =>
        {
            var at = text.IndexOf(old, StringComparison.Ordinal);
            return text[..at] + typed + text[(at + old.Length)..];
        });
        var offset = SampleText.Of(SampleText.Technique).Text.IndexOf(old, StringComparison.Ordinal) + typed.Length;
        return (Completer.At(sample.Snapshot, sample.Path, offset)!, sample.Text);
    }

    [GeneratedRegex(@"\$([0-9]+)")]
    private static partial Regex Stop();
}
