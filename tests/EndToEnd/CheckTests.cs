using System.Text;
using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary><c>techlint check</c> as a shell or a pipeline calls it.</summary>
public sealed class CheckTests
{
    private static readonly Dictionary<string, string> NoEnvironment = [];

    public static TheoryData<string> All => Executables.All;

    public static TheoryData<string, string> Formats => Executables.With("text", "json", "sarif");

    [Theory]
    [MemberData(nameof(All))]
    public void The_sound_samples_are_clean(string executable)
    {
        var outcome = Outcome.Of(executable, Repository.Root, "check", "samples");
        outcome.Status.Should().Be(0, outcome.Output);
        outcome.Output.Should().BeEmpty();
        outcome.Error.Should().Contain("as of 2026-11-24: no findings");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_flawed_samples_are_not(string executable)
    {
        var outcome = Outcome.Of(executable, Repository.Root, "check", "samples/flawed");
        outcome.Status.Should().Be(1);
        outcome.Output.Should().MatchRegex(@"(?m)^samples/flawed/techniques/[a-z-]+\.technique\.yaml:\d+:\d+: error: .+ \[[a-z-]+\]$");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_json_report_has_its_promised_shape(string executable)
    {
        var outcome = Outcome.Of(executable, Repository.Flawed, "check", "--format", "json");
        outcome.Status.Should().Be(1);
        Keys(outcome.Json).Should().Equal("format", "tool", "as-of", "findings", "summary");
        ((int)outcome.Json["format"]!).Should().Be(1);
        Keys(outcome.Json["summary"]).Should().Equal(
            "files", "errors", "warnings", "notes", "waived", "baselined", "not-checked", "lowered-by-settings", "excluded");
        ((int)outcome.Json["summary"]!["files"]!).Should().Be(Repository.FilesOf(Repository.Flawed).Count);
        foreach (var finding in outcome.Findings())
        {
            Keys(finding).Should().Equal(
                "rule", "severity", "file", "start", "end", "at", "message", "evidence", "requirement", "related", "fixes", "waived-by", "baselined");
            Keys(finding["start"]).Should().Equal("line", "column");
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Another_run_with_any_number_of_jobs_gives_the_same_bytes(string executable, string format)
    {
        byte[] Bytes(string jobs) => Outcome.Of(executable, Repository.Root, "check", "samples/flawed", "--format", format, "--jobs", jobs).Bytes;
        var once = Bytes("1");
        once.Should().NotBeEmpty();
        Bytes("4").AsSpan().SequenceEqual(once).Should().BeTrue("four jobs give what one gives");
    }

    [Fact]
    public void Both_builds_give_the_same_bytes()
    {
        Assert.SkipUnless(File.Exists(Executables.PathOf("native")), "no native executable was published to artifacts/native");
        byte[] Bytes(string executable) => Outcome.Of(executable, Repository.Root, "check", "samples/flawed", "--format", "json").Bytes;
        Bytes("native").AsSpan().SequenceEqual(Bytes("ordinary")).Should().BeTrue();
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Standard_input_stands_for_the_file_that_the_call_names(string executable)
    {
        using var workspace = new TemporaryWorkspace();
        var (text, line, character) = workspace.Flawed();
        var outcome = Outcome.Of(
            executable, workspace.Folder, NoEnvironment, Encoding.UTF8.GetBytes(text),
            "check", "-", "--stdin-filename", TemporaryWorkspace.Technique, "--format", "json");
        outcome.Status.Should().Be(1);
        outcome.Findings().Should().Contain(finding => (string)finding["rule"]! == "index-offset-against-thickness" && (string)finding["file"]! == TemporaryWorkspace.Technique);
        outcome.Findings().Should().Contain(finding => (int)finding["start"]!["line"]! == line + 1 && (int)finding["start"]!["column"]! == character + 1);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_report_written_to_a_file_is_the_report_that_would_be_printed(string executable)
    {
        using var folder = new TemporaryWorkspace();
        var printed = Outcome.Of(executable, Repository.Flawed, "check", "--format", "json");
        var written = Outcome.Of(executable, Repository.Flawed, "check", "--format", "json", "--output", folder.PathOf("report.json"));
        written.Status.Should().Be(1);
        written.Bytes.Should().BeEmpty();
        File.ReadAllBytes(folder.PathOf("report.json")).Should().Equal(printed.Bytes);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_day_of_the_call_is_the_day_printed(string executable)
    {
        Outcome.Of(executable, Repository.Root, "check", "samples", "--as-of", "2026-10-20").Error.Should().Contain("as of 2026-10-20");
        var json = Outcome.Of(executable, Repository.Root, "check", "samples", "--as-of", "2026-10-20", "--format", "json");
        ((string)json.Json["as-of"]!).Should().Be("2026-10-20");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_mildest_severity_that_fails_is_the_callers_choice(string executable)
    {
        using var workspace = new TemporaryWorkspace();
        // A definition that nothing uses is a note.
        var technique = workspace.Read(TemporaryWorkspace.Technique);
        workspace.Write(
            TemporaryWorkspace.Technique,
            technique.Replace("references:\n", "references:\n  - {id: spare, method: lateral-wave, level: 60 %}\n", StringComparison.Ordinal));
        string[] call = ["check", TemporaryWorkspace.Technique, "--format", "json"];
        var relaxed = Outcome.Of(executable, workspace.Folder, call);
        relaxed.Findings().Should().ContainSingle().Which["severity"]!.GetValue<string>().Should().NotBe("error");
        relaxed.Status.Should().Be(0);
        Outcome.Of(executable, workspace.Folder, [.. call, "--fail-on", "note"]).Status.Should().Be(1);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Output_that_is_no_terminal_has_no_colour_and_NO_COLOR_changes_nothing(string executable)
    {
        var plain = Outcome.Of(executable, Repository.Root, new Dictionary<string, string> { ["TERM"] = "xterm-256color" }, null, "check", "samples/flawed");
        var without = Outcome.Of(
            executable, Repository.Root, new Dictionary<string, string> { ["TERM"] = "xterm-256color", ["NO_COLOR"] = "1" }, null, "check", "samples/flawed");
        plain.Bytes.Should().NotContain((byte)0x1b).And.Equal(without.Bytes);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void On_a_terminal_the_severity_is_coloured_unless_NO_COLOR_is_set(string executable)
    {
        Assert.SkipUnless(Tools.Has("script"), "there is no 'script' here to make a terminal with");
        using var workspace = new TemporaryWorkspace();
        workspace.Write(TemporaryWorkspace.Technique, workspace.Flawed().Text);
        string OnTerminal(Dictionary<string, string> environment) => Outcome.OfProgram(
            "script", workspace.Folder, environment, null, "-qec", $"'{Executables.PathOf(executable)}' check {TemporaryWorkspace.Technique}", "/dev/null").Output;
        OnTerminal(new() { ["TERM"] = "xterm", ["NO_COLOR"] = "" }).Should().Contain("\u001b[1;31merror\u001b[0m");
        OnTerminal(new() { ["TERM"] = "xterm", ["NO_COLOR"] = "1" }).Should().Contain("error").And.NotContain("\u001b[1;31m");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_reader_that_leaves_early_is_no_trouble(string executable)
    {
        var outcome = Outcome.OfProgram(
            "bash", Repository.Root, NoEnvironment, null, "-c",
            "{ \"$0\" check samples/flawed --format sarif; echo \"status $?\" >&2; } | head -c 1", Executables.PathOf(executable));
        outcome.Output.Should().Be("{");
        outcome.Error.Should().Be("status 1\n");
    }

    private static IEnumerable<string> Keys(JsonNode? node) => ((JsonObject)node!).Select(pair => pair.Key);
}
