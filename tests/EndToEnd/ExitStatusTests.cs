using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>0 clean, 1 findings, 2 a call that cannot be used; the reason on standard error, results alone on standard output.</summary>
public sealed class ExitStatusTests
{
    public static TheoryData<string> All => Executables.All;

    public static TheoryData<string, string> UnusableCalls => Executables.With(
        "",
        "no-such-command",
        "check --no-such-option",
        "check no-such-file.technique.yaml",
        "check no/such/folder",
        "check empty",
        "check techniques/*.equipment.yaml",
        "check readme.txt",
        "check --format xml",
        "check --as-of yesterday",
        "check --jobs 0",
        "check --settings no-such-settings.yaml",
        "check --root no/such/folder",
        "check -",
        "check --output no/such/folder/report.txt",
        "compute",
        "compute techniques",
        "compute no-such-file.technique.yaml",
        "compute equipment/workshop.equipment.yaml",
        "compute " + TemporaryWorkspace.Technique + " --thickness 12",
        "explain no-such-rule");

    public static TheoryData<string, string> UsableCalls => Executables.With(
        "--help", "--version", "check --help", "check", "check .", "check " + TemporaryWorkspace.Technique, "check techniques/*.technique.yaml", "explain",
        "compute " + TemporaryWorkspace.Technique);

    public static TheoryData<string, string> BrokenSettings => Executables.With(
        "techlint: 1\nrequirements: 7\n", "techlint: 1\nrequirements: [a\n as-of: {\n", "techlint: 1\nrules: {no-such-rule: {severity: off, reason: none}}\n");

    [Theory]
    [MemberData(nameof(UnusableCalls))]
    public void A_call_that_cannot_be_used_is_status_2(string executable, string call)
    {
        using var workspace = new TemporaryWorkspace();
        Directory.CreateDirectory(workspace.PathOf("empty"));
        workspace.Write("readme.txt", "no technique");
        var outcome = Outcome.Of(executable, workspace.Folder, Words(call));
        outcome.Status.Should().Be(2, outcome.Output + outcome.Error);
        outcome.Output.Should().BeEmpty();
        outcome.Error.Should().NotBeEmpty().And.NotContain("Exception").And.NotContain("   at ");
    }

    [Theory]
    [MemberData(nameof(UsableCalls))]
    public void A_call_that_is_done_and_clean_is_status_0(string executable, string call)
    {
        using var workspace = new TemporaryWorkspace();
        var outcome = Outcome.Of(executable, workspace.Folder, Words(call));
        outcome.Status.Should().Be(0, outcome.Output + outcome.Error);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_broken_text_is_a_finding_and_status_1(string executable)
    {
        using var workspace = new TemporaryWorkspace();
        workspace.Write("techniques/broken.technique.yaml", "technique: [broken\ntitle: {a: \"b\n\t- x");
        var outcome = Outcome.Of(executable, workspace.Folder, "check", "techniques/broken.technique.yaml");
        outcome.Status.Should().Be(1, outcome.Error);
        outcome.Output.Should().Contain("[yaml-syntax]");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_file_that_is_no_text_is_a_finding_and_status_1(string executable)
    {
        using var workspace = new TemporaryWorkspace();
        File.WriteAllBytes(workspace.PathOf("techniques/noise.technique.yaml"), [0x00, 0xff, 0xfe, 0x00, 0x80, 0xc3, 0x28]);
        var outcome = Outcome.Of(executable, workspace.Folder, "check", "techniques/noise.technique.yaml");
        outcome.Status.Should().Be(1, outcome.Error);
        outcome.Output.Should().Contain("[encoding-unreadable]");
    }

    [Theory]
    [MemberData(nameof(BrokenSettings))]
    public void Settings_that_cannot_be_used_are_status_2_whatever_the_call_asks_about(string executable, string settings)
    {
        using var workspace = new TemporaryWorkspace();
        workspace.Write("other.yaml", settings);
        var named = Outcome.Of(executable, workspace.Folder, "check", TemporaryWorkspace.Technique, "--settings", "other.yaml");
        named.Status.Should().Be(2, named.Output + named.Error);

        workspace.Write("techlint.yaml", settings);
        foreach (var path in new[] { ".", TemporaryWorkspace.Technique })
        {
            var outcome = Outcome.Of(executable, workspace.Folder, "check", path);
            outcome.Status.Should().Be(2, outcome.Output + outcome.Error);
            outcome.Output.Should().StartWith("techlint.yaml:");
        }
    }

    private static string[] Words(string call) => call.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
