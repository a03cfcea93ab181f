using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>One engine behind two doors: what the command line finds, the editor shows.</summary>
public sealed class TwoDoorsTests
{
    public static TheoryData<string, string> Workspaces => Executables.With("samples", "samples/flawed");

    [Theory]
    [MemberData(nameof(Workspaces))]
    public async Task Command_line_and_server_give_the_same_findings_for_every_file(string executable, string name)
    {
        var workspace = Path.Combine(Repository.Root, name);
        var files = Repository.FilesOf(workspace);
        var run = Outcome.Of(executable, workspace, "check", "--format", "json");
        var expected = run.Findings().Where(finding => finding["waived-by"] is null && !(bool)finding["baselined"]!)
            .GroupBy(finding => (string)finding["file"]!).ToDictionary(group => group.Key, group => group.Select(Told).Order(StringComparer.Ordinal).ToArray());

        await using var wire = Wire.Open(executable, workspace);
        // Code points, as the command line counts.
        var initialized = await wire.Client.InitializeAsync(Wire.UriOf(workspace), "utf-32");
        ((string)initialized["result"]!["capabilities"]!["positionEncoding"]!).Should().Be("utf-32");
        foreach (var file in files)
        {
            var uri = Wire.UriOf(Path.Combine(workspace, file));
            await wire.Client.OpenAsync(uri, File.ReadAllText(Path.Combine(workspace, file)));
            var sent = await wire.Client.DiagnosticsAsync(uri);
            var shown = ((JsonArray)sent["params"]!["diagnostics"]!).Select(found => Shown((JsonObject)found!)).Order(StringComparer.Ordinal);
            shown.Should().Equal(expected.GetValueOrDefault(file, []), "the two doors agree on {0}", file);
        }

        expected.Keys.Should().BeSubsetOf(files);
        await wire.Client.EndAsync();
        (await wire.ExitAsync()).Status.Should().Be(0);
    }

    private static string Told(JsonObject finding) =>
        $"{At(finding["start"]!)}-{At(finding["end"]!)} {finding["severity"]} {finding["rule"]}: {finding["message"]}";

    private static string Shown(JsonObject found) =>
        $"{At(found["range"]!["start"]!, 1)}-{At(found["range"]!["end"]!, 1)} {Severity((int)found["severity"]!)} {found["code"]}: "
        + ((string)found["message"]!).Split('\n')[0];

    private static string At(JsonNode place) => $"{place["line"]}:{place["column"]}";

    private static string At(JsonNode place, int first) => $"{(int)place["line"]! + first}:{(int)place["character"]! + first}";

    private static string Severity(int level) => level switch { 1 => "error", 2 => "warning", _ => "note" };
}
