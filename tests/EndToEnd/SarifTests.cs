using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

public sealed class SarifTests
{
    public static TheoryData<string, string> Runs => Executables.With("samples", "samples/flawed");

    [Theory]
    [MemberData(nameof(Runs))]
    public void A_log_is_valid_by_the_schema_of_the_standard(string executable, string workspace)
    {
        using var folder = new TemporaryWorkspace();
        var log = folder.PathOf("log.sarif");
        Outcome.Of(executable, Repository.Root, "check", workspace, "--format", "sarif", "--output", log).Status.Should().BeOneOf(0, 1);
        Node.Run("check-sarif.mjs", log).Faults(log).Should().BeEmpty();
    }

    [Fact]
    public void The_validator_refuses_a_log_without_messages()
    {
        using var folder = new TemporaryWorkspace();
        folder.Write("log.sarif", """{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "x"}}, "results": [{"ruleId": "y"}]}]}""");
        Node.Run("check-sarif.mjs", folder.PathOf("log.sarif")).Faults(folder.PathOf("log.sarif")).Should().ContainMatch("*message*");
    }

    [Fact]
    public void A_log_tells_the_same_findings_as_the_json_report_and_describes_their_rules()
    {
        var run = (JsonObject)Outcome.Of("ordinary", Repository.Flawed, "check", "--format", "sarif").Json["runs"]![0]!;
        var rules = ((JsonArray)run["tool"]!["driver"]!["rules"]!).Select(rule => (string)rule!["id"]!).ToArray();
        var results = ((JsonArray)run["results"]!).Select(result => (JsonObject)result!).ToArray();

        var told = results.Select(result => Told(
            (string)result["ruleId"]!, (string)result["locations"]![0]!["physicalLocation"]!["artifactLocation"]!["uri"]!,
            (int)result["locations"]![0]!["physicalLocation"]!["region"]!["startLine"]!));
        var expected = Outcome.Of("ordinary", Repository.Flawed, "check", "--format", "json").Findings().Select(finding => Told(
            (string)finding["rule"]!, (string)finding["file"]!, (int)finding["start"]!["line"]!));

        told.Should().NotBeEmpty().And.Equal(expected);
        results.Should().OnlyContain(result => rules[(int)result["ruleIndex"]!] == (string)result["ruleId"]!);
        results.Should().OnlyContain(result => result["partialFingerprints"] is JsonObject && ((JsonObject)result["partialFingerprints"]!).Count > 0);
    }

    private static string Told(string rule, string file, int line) => $"{rule} {file}:{line}";
}
