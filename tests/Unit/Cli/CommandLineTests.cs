using System.Text;
using System.Text.Json;
using FluentAssertions;
using TechLint.Cli;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Syntax;
using TechLint.Tests.Unit.Engine.Files;
using TechLint.Tests.Unit.Reports;
using TechLint.Tests.Unit.Reports.Compute;
using Xunit;

namespace TechLint.Tests.Unit.Cli;

public sealed class CommandLineTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public CommandLineTests() => folder
        .With("samples/techlint.yaml").With("samples/a.technique.yaml").With("samples/flawed/techlint.yaml")
        .With("samples/flawed/f.technique.yaml").With("empty/readme.md");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_clean_workspace_is_status_0_with_nothing_on_standard_output()
    {
        var engine = new FakeEngine();
        var run = Run(engine, "check", "samples");
        run.Should().Be((0, "", "techlint: samples/flawed: a workspace of its own, left out; 'techlint check samples/flawed' looks at it\n"
            + "2 files as of 2026-11-24: no findings\n"));
        engine.Asked.Single().Files.Should().Equal("a.technique.yaml", "techlint.yaml");
    }

    [Fact]
    public void Findings_are_status_1_and_shown_from_the_working_folder()
    {
        var run = Run(Finding(Severity.Error), "check", "samples/flawed");
        run.Status.Should().Be(1);
        run.Output.Should().Be("samples/flawed/f.technique.yaml:1:1: error: wrong [unknown-key]\n");
        run.Error.Should().Be("2 files as of 2026-11-24: 1 error\n");
    }

    [Theory]
    [InlineData(Severity.Error, null, 1)]
    [InlineData(Severity.Warning, null, 0)]
    [InlineData(Severity.Warning, "warning", 1)]
    [InlineData(Severity.Note, "warning", 0)]
    [InlineData(Severity.Note, "note", 1)]
    public void Fail_on_draws_the_line(Severity severity, string? failOn, int status) =>
        Run(Finding(severity), ["check", "samples/flawed", .. failOn is null ? Array.Empty<string>() : ["--fail-on", failOn]]).Status.Should().Be(status);

    [Fact]
    public void Waived_and_baselined_findings_never_count()
    {
        Run(Finding(Severity.Error, waivedBy: "L. Marchetti"), "check", "samples/flawed", "--fail-on", "note").Status.Should().Be(0);
        Run(Finding(Severity.Error, baselined: true), "check", "samples/flawed", "--fail-on", "note").Status.Should().Be(0);
    }

    [Theory]
    [InlineData("techlint: absent: no such file or folder\n", "check", "absent")]
    [InlineData("techlint: empty: nothing to check here\n", "check", "empty")]
    [InlineData("techlint: empty/**: nothing to check here\n", "check", "empty/**")]
    [InlineData("techlint: -: standard input needs --stdin-filename, to say what it is\n", "check", "-")]
    [InlineData("techlint: --root nowhere: no such folder\n", "check", "--root", "nowhere")]
    [InlineData("techlint: --settings nowhere.yaml: no such file\n", "check", "samples", "--settings", "nowhere.yaml")]
    [InlineData("techlint: --settings samples: a folder, not a file\n", "check", "samples", "--settings", "samples")]
    [InlineData("techlint: samples: a folder, not a technique\n", "compute", "samples")]
    [InlineData("techlint: there is no rule 'volume-not-coverd'; did you mean 'volume-not-covered'?\n", "explain", "volume-not-coverd")]
    [InlineData("techlint: there is no rule 'zzz'\n", "explain", "zzz")]
    public void A_call_that_cannot_be_used_is_status_2_and_says_why(string error, params string[] call) =>
        Run(new FakeEngine(), call).Should().Be((2, "", error));

    [Theory]
    [InlineData("unknown option '--fromat'; did you mean '--format'?", "check", "--fromat", "json")]
    [InlineData("unknown option '-x'", "check", "samples", "-x")]
    [InlineData("unknown command 'chekc'; did you mean 'check'?", "chekc", "samples")]
    [InlineData("--format takes text, json, sarif, not 'xml'", "check", "--format", "xml")]
    [InlineData("--format takes text, json, not 'sarif'", "compute", "samples/a.technique.yaml", "--format", "sarif")]
    [InlineData("--fail-on takes error, warning, note, not 'never'", "check", "--fail-on", "never")]
    [InlineData("--as-of takes a day as 2026-11-24, not '24.11.2026'", "check", "--as-of", "24.11.2026")]
    [InlineData("--jobs takes a whole number from 1 to 1024, not '0'", "check", "--jobs", "0")]
    [InlineData("--thickness needs a unit: 25 mm or 25 in, not '25'", "compute", "samples/a.technique.yaml", "--thickness", "25")]
    [InlineData("--thickness takes a length greater than zero, not '0 mm'", "compute", "samples/a.technique.yaml", "--thickness", "0 mm")]
    [InlineData("--thickness takes a length with its unit, as 25 mm, 1.25 in or 1 1/4 in, not '25 deg'", "compute", "samples/a.technique.yaml", "--thickness", "25 deg")]
    [InlineData("unknown option '--delay-table'", "compute", "samples/a.technique.yaml", "--delay-table")]
    [InlineData("'more' is one argument too many", "explain", "a", "more")]
    public void A_call_that_is_no_call_is_status_2_with_a_hint(string complaint, params string[] call)
    {
        var run = Run(new FakeEngine(), call);
        run.Status.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Error.Should().StartWith($"techlint: {complaint}\n").And.EndWith("--help' tells what it takes\n");
    }

    [Fact]
    public void No_arguments_print_the_help_as_an_error()
    {
        var run = Run(new FakeEngine());
        run.Status.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Error.Should().Contain("check").And.Contain("explain");
    }

    [Fact]
    public void Help_and_version_go_to_standard_output()
    {
        Run(new FakeEngine(), "--version").Should().Be((0, "techlint 0.1.0\n", ""));
        var help = Run(new FakeEngine(), "check", "--help");
        help.Status.Should().Be(0);
        help.Error.Should().BeEmpty();
        System.Text.RegularExpressions.Regex.Matches(help.Output, "default").Should().HaveCount(7, "each default is told once");
        foreach (var option in (string[])["--format", "--output", "--root", "--settings", "--requirements", "--as-of", "--fail-on", "--jobs", "--stdin-filename"])
        {
            help.Output.Should().Contain(option);
        }
    }

    [Fact]
    public void Options_reach_the_engine()
    {
        folder.With("other.yaml", "techlint: 1\n");
        var engine = new FakeEngine();
        Run(
            engine, "check", "samples/a.technique.yaml", "--as-of", "2025-02-28", "--requirements", "one", "--requirements", "two", "--settings",
            "other.yaml", "--jobs", "3", "--root", ".").Status.Should().Be(0);
        engine.Asked[0].Files.Should().Equal(["techlint.yaml"], "the settings named are judged before anything by them");
        var asked = engine.Asked[1];
        asked.Root.Should().Be(folder.Path);
        asked.Files.Should().Equal("samples/a.technique.yaml");
        asked.Jobs.Should().Be(3);
        asked.Options.AsOf.Should().Be(new DateOnly(2025, 2, 28));
        asked.Options.Today.Should().Be(new DateOnly(2026, 11, 24));
        asked.Options.AddedRequirements.Should().Equal("one", "two");
        asked.Options.SettingsText!.Text.Should().Be("techlint: 1\n");
    }

    [Fact]
    public void Findings_never_take_the_place_of_what_was_checked()
    {
        var engine = new FakeEngine();
        Run(engine, "check", "samples/a.technique.yaml", "--output", "samples/a.technique.yaml").Status.Should().Be(2);
        engine.Asked.Should().BeEmpty();
    }

    [Fact]
    public void A_requirement_set_that_is_not_there_is_status_2()
    {
        var engine = new FakeEngine();
        Run(engine, "check", "samples/a.technique.yaml", "--requirements", "no-such-set").Should().Be((2, "", "techlint: --requirements no-such-set: no such requirement set\n"));
        Run(engine, "compute", "samples/a.technique.yaml", "--requirements", "no-such-set").Status.Should().Be(2);
        engine.Asked.Should().BeEmpty("nothing is judged by less than was asked for");
    }

    [Fact]
    public void Standard_input_stands_for_a_file()
    {
        var engine = Finding(Severity.Error);
        var run = Run(engine, Encoding.UTF8.GetBytes("🔧 typed"), "check", "-", "--stdin-filename", "samples/new.technique.yaml");
        run.Status.Should().Be(1);
        run.Output.Should().StartWith("samples/new.technique.yaml:1:1: error");
        engine.Asked[0].Input.Should().Be("🔧 typed");
        Run(engine, [0xC3, 0x28], "check", "-", "--stdin-filename", "samples/new.technique.yaml").Should().Be(
            (2, "", "techlint: standard input: neither UTF-8 nor UTF-16 text\n"));
    }

    [Fact]
    public void Several_workspaces_make_one_report_told_from_the_folder_above_them()
    {
        var run = Run(Finding(Severity.Error), "check", "samples", "samples/flawed", "--format", "json");
        run.Status.Should().Be(1);
        using var json = JsonDocument.Parse(run.Output);
        json.RootElement.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("file").GetString())
            .Should().Equal("a.technique.yaml", "flawed/f.technique.yaml");
        json.RootElement.GetProperty("summary").GetProperty("files").GetInt32().Should().Be(4);
    }

    [Fact]
    public void Workspaces_judged_by_different_days_are_not_mixed()
    {
        var day = new DateOnly(2026, 1, 1);
        var engine = new FakeEngine { AsOf = options => options.AsOf ?? (day = day.AddDays(1)) };
        Run(engine, "check", "samples", "samples/flawed").Status.Should().Be(2);
        Run(engine, "check", "samples", "samples/flawed", "--as-of", "2026-01-01").Status.Should().Be(0);
    }

    [Fact]
    public void An_error_inside_is_a_finding_and_status_3_without_any_of_its_text()
    {
        var engine = new FakeEngine { Throws = new InvalidOperationException("secret inside") };
        var run = Run(engine, "check", "samples/flawed");
        run.Status.Should().Be(3);
        run.Output.Should().Contain("[internal-error]").And.Contain("kind InvalidOperationException").And.NotContain("secret").And.NotContain("   at ");
        run.Error.Should().NotContain("secret");
        Run(engine, "compute", "samples/a.technique.yaml").Should().Match<(int Status, string Output, string Error)>(one =>
            one.Status == 3 && one.Output.Length == 0 && one.Error.Contains("[internal-error]") && !one.Error.Contains("secret"));
    }

    [Fact]
    public void One_rule_that_broke_is_status_3_and_broken_settings_are_status_2()
    {
        Run(Finding(Severity.Error, "internal-error"), "check", "samples/flawed").Status.Should().Be(3);
        var broken = new FakeEngine
        {
            Finds = file => file.EndsWith("techlint.yaml")
                ? [new CheckedFinding(Runs.Plain(Severity.Error, "broken-settings") with { File = file, Span = new TextSpan(0, 1) }, null, false)]
                : [],
        };
        Run(broken, "check", "samples/flawed").Status.Should().Be(2);
        Run(broken, "check", "samples/flawed/f.technique.yaml").Status.Should().Be(2, "settings in error count whatever was asked about");
    }

    [Fact]
    public void An_interrupted_run_is_quiet() =>
        Run(new FakeEngine { Throws = new OperationCanceledException() }, "check", "samples/flawed").Should().Be((130, "", ""));

    [Fact]
    public void Output_goes_to_a_file_whole_or_not_at_all()
    {
        var run = Run(Finding(Severity.Error), "check", "samples/flawed", "--output", "report.txt");
        run.Should().Be((1, "", "2 files as of 2026-11-24: 1 error\n"));
        File.ReadAllText(folder.At("report.txt")).Should().Be(
            "samples/flawed/f.technique.yaml:1:1: error: wrong [unknown-key]\n2 files as of 2026-11-24: 1 error\n");
        Run(new FakeEngine(), "check", "samples/flawed", "--output", "report.txt", "--format", "json").Status.Should().Be(0);
        File.ReadAllText(folder.At("report.txt")).Should().StartWith("{");
        Run(new FakeEngine(), "check", "samples/flawed", "--output", "nowhere/report.txt").Should().Be(
            (2, "", "techlint: --output nowhere/report.txt: cannot be written\n"));
        Run(new FakeEngine(), "check", "samples/flawed", "--output", "samples").Status.Should().Be(2);
        Run(new FakeEngine(), "check", "samples/flawed", "--format", "json", "--output", "-").Output.Should().StartWith("{");
        Directory.GetFiles(folder.Path).Select(Path.GetFileName).Should().Equal("report.txt");
    }

    [Fact]
    public void Sarif_states_the_exit_status()
    {
        using var json = JsonDocument.Parse(Run(Finding(Severity.Error), "check", "samples/flawed", "--format", "sarif").Output);
        json.RootElement.GetProperty("runs")[0].GetProperty("invocations")[0].GetProperty("exitCode").GetInt32().Should().Be(1);
    }

    [Fact]
    public void Only_text_on_a_terminal_is_coloured()
    {
        Run(Finding(Severity.Error), [], color: true, "check", "samples/flawed").Output.Should().Contain("\u001b[");
        Run(Finding(Severity.Error), [], color: true, "check", "samples/flawed", "--output", "r.txt").Output.Should().BeEmpty();
        File.ReadAllText(folder.At("r.txt")).Should().NotContain("\u001b");
        Run(Finding(Severity.Error), "check", "samples/flawed").Output.Should().NotContain("\u001b");
    }

    [Fact]
    public void Compute_prints_figures_for_the_component_asked_for()
    {
        var engine = new FakeEngine { Computed = Studies.Technique };
        var run = Run(engine, "compute", "samples/a.technique.yaml", "--thickness", "3/4 in", "--outside-diameter", "1.4 m", "--format", "json");
        run.Status.Should().Be(0);
        run.Output.Should().Contain("\"technique\": \"GM-UT-014\"");
        engine.Component.Thickness!.Value.Millimetres.Should().Be(19.05);
        engine.Component.Diameter!.Value.Millimetres.Should().Be(1400);
        Run(new FakeEngine(), "compute", "samples/a.technique.yaml").Status.Should().Be(2);
        Run(new FakeEngine { Computed = new ComputedTechnique("T", []) }, "compute", "samples/a.technique.yaml", "--thickness", "2 in").Should().Be(
            (2, "", "techlint: samples/a.technique.yaml: no setup serves thickness 50.8 mm\n"));
    }

    [Fact]
    public void Lsp_hands_the_streams_over_as_they_are() =>
        Run(new FakeEngine(), Encoding.UTF8.GetBytes("Content-Length: 2\r\n\r\n{}"), "lsp", "--stdio").Should().Be((0, "Content-Length: 2\r\n\r\n{}", ""));

    [Fact]
    public void A_path_that_looks_like_an_option_stands_behind_two_dashes()
    {
        folder.With("-x.technique.yaml").With("@y.technique.yaml");
        var engine = new FakeEngine();
        Run(engine, "check", "@y.technique.yaml", "--", "-x.technique.yaml").Status.Should().Be(0);
        engine.Asked.Single().Files.Should().Equal("-x.technique.yaml", "@y.technique.yaml");
    }

    private static FakeEngine Finding(Severity severity, string rule = "unknown-key", string? waivedBy = null, bool baselined = false) => new()
    {
        Finds = file => file.EndsWith(".technique.yaml")
            ? [new CheckedFinding(Runs.Plain(severity, rule) with { File = file, Span = new TextSpan(0, 1), Message = "wrong" }, waivedBy, baselined)]
            : [],
    };

    private (int Status, string Output, string Error) Run(FakeEngine engine, params string[] call) => Run(engine, [], color: false, call);

    private (int Status, string Output, string Error) Run(FakeEngine engine, byte[] input, params string[] call) => Run(engine, input, color: false, call);

    private (int Status, string Output, string Error) Run(FakeEngine engine, byte[] input, bool color, params string[] call)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        using var writer = Terminal.Writer(output);
        var terminal = new Terminal(new MemoryStream(input), output, writer, error, color, folder.Path, () => new DateOnly(2026, 11, 24));
        var status = CommandLine.Run(call, terminal, engine, CancellationToken.None);
        writer.Flush();
        return (status, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
