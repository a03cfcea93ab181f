using System.IO.Pipelines;
using System.Text.Json.Nodes;
using FluentAssertions;
using FluentAssertions.Execution;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;
using TechLint.Tests.Tools.Fixtures;
using TechLint.Tests.Unit.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>One session over the base on a disk; each case is opened as unsaved documents and closed again.</summary>
public sealed class FixtureSession : IAsyncLifetime
{
    private readonly TemporaryFolder folder = new();
    private readonly CancellationTokenSource stop = new();
    private Task<int> server = Task.FromResult(0);
    private int version;

    internal RawLspClient Client { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        foreach (var (path, text) in FixtureReader.Base) folder.With(path, text);
        var (toServer, fromServer) = (new Pipe(), new Pipe());
        Client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream());
        server = Task.Run(async () =>
        {
            await using var output = fromServer.Writer.AsStream();
            var options = new LanguageServerOptions(() => FixtureRun.Day) { QuietTime = TimeSpan.FromMilliseconds(1) };
            return await LanguageServerHost.RunAsync(toServer.Reader.AsStream(), output, options, stop.Token);
        });
        await Client.InitializeAsync(new Uri(folder.Path + "/").AbsoluteUri);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await server.WaitAsync(RawLspClient.Patience);
        await Client.DisposeAsync();
        stop.Dispose();
        folder.Dispose();
    }

    /// <summary>What the server publishes for the files of a case: those that others rest on are opened first.</summary>
    internal async Task<IReadOnlyList<ExpectedFinding>> FindingsOfAsync(FixtureCase one)
    {
        version++;
        FixtureFile[] files = [.. one.Files.OrderBy(file => file.Path.EndsWith(".technique.yaml", StringComparison.Ordinal))];
        foreach (var file in files) await Client.OpenAsync(UriOf(file.Path), file.Text!, version);
        var found = new List<ExpectedFinding>();
        foreach (var file in files)
        {
            // A set or library that was opened later than another has it judged again: take the last word.
            var wanted = file.Expected.Length;
            var sent = await Client.DiagnosticsAsync(
                UriOf(file.Path), sent => (int?)sent["version"] == version && ((JsonArray)sent["diagnostics"]!).Count == wanted);
            found.AddRange(((JsonArray)sent["params"]!["diagnostics"]!).Select(diagnostic => Read(file.Path, (JsonObject)diagnostic!)));
        }

        foreach (var file in files) await Client.CloseAsync(UriOf(file.Path));
        return found;
    }

    private static ExpectedFinding Read(string path, JsonObject diagnostic)
    {
        var (start, end) = (diagnostic["range"]!["start"]!, diagnostic["range"]!["end"]!);
        return new(
            path, (string)diagnostic["code"]!, (int)start["line"]!, (int)start["character"]!, (int)end["line"]!, (int)end["character"]!, (string)diagnostic["message"]!);
    }

    private string UriOf(string path) => new Uri(folder.At(path)).AbsoluteUri;
}

/// <summary>The rules held to their fixtures through the other front door.</summary>
public sealed class FixtureServerTests(FixtureSession session) : IClassFixture<FixtureSession>
{
    public static TheoryData<string> Rules() => [.. FixtureReader.All.Keys];

    [Theory]
    [MemberData(nameof(Rules))]
    public async Task The_server_finds_the_same_at_the_same_characters(string rule)
    {
        using var all = new AssertionScope();
        foreach (var one in FixtureReader.All[rule].Section("Wrong")!.Cases)
        {
            // Bytes that are no text cannot be opened in an editor, and a failing rule cannot be put into the server.
            if (one.Throwing is not null || one.Files.Any(file => file.Text is null)) continue;
            var found = await session.FindingsOfAsync(one);
            found.Select(finding => finding with { Fragment = "" }).Should().BeEquivalentTo(
                one.Expected.Select(mark => mark with { Fragment = "" }), because: $"so {rule} marks them ({one})");
            foreach (var mark in one.Expected)
            {
                found.Should().Contain(finding => finding.Rule == mark.Rule && finding.Fragment.Contains(mark.Fragment, StringComparison.Ordinal));
            }
        }
    }
}
