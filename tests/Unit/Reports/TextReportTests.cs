using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports;
using TechLint.Rules.Findings;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class TextReportTests
{
    [Fact]
    public void A_finding_is_one_line_in_the_gnu_form_with_what_it_rests_on_below() =>
        Findings(Runs.Run(Runs.Counted(Runs.Coverage), Runs.Counted(Runs.Plain()))).Should().Be("""
            techniques/gm ü#1.technique.yaml:2:25: error: index offset 26 mm leaves 4.1 % of the weld volume unseen at 25 mm [volume-not-covered]
                limit 100 %
                seen 95.9 %: worst at y -3.5..2.0 mm, z 21.0..25.0 mm
                iso-13588-level-b: ISO 13588:2019, 8.1 (from memory)
                equipment/w.equipment.yaml:1:1: the wedge is defined here
            techniques/gm ü#1.technique.yaml:1:1: note: no key is named "technique" [unknown-key]

            """);

    [Theory]
    [InlineData("seen at 125 mm", "thickness 25 mm")]
    [InlineData("seen at -25 mm", "thickness 25 mm")]
    [InlineData("seen at 25 mm/s", null)]
    [InlineData("seen at 25 mm", null)]
    [InlineData("seen at 25 mm.", null)]
    [InlineData("seen at 125 mm and 25 mm", null)]
    public void A_number_is_told_once_and_only_a_whole_number_counts(string message, string? line)
    {
        var finding = Runs.Plain() with { Message = message, Evidence = [new Evidence("thickness", 25m, null, "mm")] };
        var lines = Findings(Runs.Run(Runs.Counted(finding))).Split('\n');
        (lines.Length > 2 ? lines[1].Trim() : null).Should().Be(line);
    }

    [Fact]
    public void Waived_and_baselined_findings_are_counted_and_not_listed()
    {
        var run = Runs.Run(new CheckedFinding(Runs.Coverage, "L. Marchetti", false), new CheckedFinding(Runs.Coverage, null, true));
        Findings(run).Should().BeEmpty();
        Summary(run).Should().Be("2 files as of 2026-11-24: no findings, 1 waived, 1 in the baseline\n");
    }

    [Fact]
    public void The_summary_states_the_day_and_whatever_made_the_result_milder()
    {
        var run = Runs.Run() with { Summary = new CheckSummary(1, 1, 2, 3, 4, 5, 6, 7, 1) };
        Summary(run).Should().Be(
            "1 file as of 2026-11-24: 1 error, 2 warnings, 3 notes, 6 things not checked, 4 waived, 5 in the baseline, 7 lowered by settings, "
            + "1 file excluded by settings\n");
        Summary(Runs.Run()).Should().Be("2 files as of 2026-11-24: no findings\n");
    }

    [Fact]
    public void Files_are_shown_from_where_the_reader_stands()
    {
        var text = Runs.Written(output => new TextReport(output, "../samples/").WriteFindings(Runs.Run(Runs.Counted(Runs.Coverage))));
        text.Should().StartWith("../samples/techniques/gm ü#1.technique.yaml:2:25: error").And.Contain("    ../samples/equipment/w.equipment.yaml:1:1:");
    }

    [Fact]
    public void What_a_file_says_neither_breaks_a_line_nor_steers_the_terminal()
    {
        var finding = Runs.Plain() with { Message = "unknown key \"a\r\n\u001b[2Jb\u202E\"" };
        Findings(Runs.Run(Runs.Counted(finding))).Should().Be(
            "techniques/gm ü#1.technique.yaml:1:1: note: unknown key \"a\uFFFD\uFFFD\uFFFD[2Jb\uFFFD\" [unknown-key]\n");
    }

    [Fact]
    public void Colour_marks_the_severity_alone()
    {
        var run = Runs.Run(Runs.Counted(Runs.Coverage), Runs.Counted(Runs.Plain(Severity.Warning)), Runs.Counted(Runs.Plain()));
        var colored = Runs.Written(output => new TextReport(output, color: true).WriteFindings(run));
        colored.Should().Contain(": \u001b[1;31merror\u001b[0m: ").And.Contain(": \u001b[1;33mwarning\u001b[0m: ").And.Contain(": \u001b[1;36mnote\u001b[0m: ");
        System.Text.RegularExpressions.Regex.Replace(colored, "\u001b\\[[0-9;]*m", "").Should().Be(Findings(run));
    }

    private static string Findings(CheckRun run) => Runs.Written(output => new TextReport(output).WriteFindings(run));

    private static string Summary(CheckRun run) => Runs.Written(output => new TextReport(output).WriteSummary(run));
}
