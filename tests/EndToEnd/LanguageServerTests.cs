using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary><c>techlint lsp</c> over the pipes of the built executable.</summary>
public sealed class LanguageServerTests
{
    public static TheoryData<string> All => Executables.All;

    [Theory]
    [MemberData(nameof(All))]
    public async Task A_session_from_initialize_to_exit(string executable)
    {
        using var workspace = new TemporaryWorkspace();
        await using var wire = Wire.Open(executable, workspace.Folder);
        var client = wire.Client;
        var uri = Wire.UriOf(workspace.PathOf(TemporaryWorkspace.Technique));
        var (text, line, character) = workspace.Flawed();

        var initialized = await client.InitializeAsync(Wire.UriOf(workspace.Folder));
        initialized["result"]!["capabilities"]!["hoverProvider"].Should().NotBeNull();
        ((string)initialized["result"]!["serverInfo"]!["name"]!).Should().Be("techlint");

        await client.OpenAsync(uri, text);
        var flawed = await client.DiagnosticsAsync(uri);
        var diagnostics = ((JsonArray)flawed["params"]!["diagnostics"]!).Select(found => (JsonObject)found!).ToArray();
        diagnostics.Should().Contain(found => (string)found["code"]! == "index-offset-against-thickness");
        diagnostics.Should().Contain(found =>
            (int)found["range"]!["start"]!["line"]! == line && (int)found["range"]!["start"]!["character"]! == character);

        await client.ChangeAsync(uri, 2, RawLspClient.Change(line, character, line, character + 2, "20"));
        var mended = await client.DiagnosticsAsync(uri, sent => (int)sent["version"]! == 2);
        ((JsonArray)mended["params"]!["diagnostics"]!).Should().BeEmpty();

        var hover = await client.HoverAsync(uri, line, character);
        ((string)hover["result"]!["contents"]!["value"]!).Should().Contain("20 mm");

        await client.EndAsync();
        var (status, error) = await wire.ExitAsync();
        status.Should().Be(0);
        error.Should().BeEmpty();
        client.Fault.Should().BeNull();
    }

    [Theory]
    [MemberData(nameof(All))]
    public async Task A_client_that_vanishes_leaves_no_server_behind(string executable)
    {
        await using var wire = Wire.Open(executable, Repository.Samples);
        await wire.Client.InitializeAsync(Wire.UriOf(Repository.Samples));
        wire.HangUp();
        (await wire.ExitAsync()).Status.Should().Be(1);
    }
}
