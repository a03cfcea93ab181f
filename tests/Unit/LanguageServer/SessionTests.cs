using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class SessionTests
{
    private const string Uri = "file:///work/a.technique.yaml";

    [Fact]
    public async Task A_whole_session_opens_checks_hovers_mends_closes_and_leaves_with_code_zero()
    {
        await using var session = await ServerSession.StartAsync();
        var client = session.Client;

        await client.OpenAsync(Uri, "first line\n  BAD here\n");
        var shown = (await client.DiagnosticsAsync(Uri))["params"]!;
        shown["version"]!.GetValue<int>().Should().Be(1);
        var diagnostic = shown["diagnostics"]!.AsArray().Should().ContainSingle().Subject!;
        diagnostic["range"]!.ToJsonString().Should().Be("""{"start":{"line":1,"character":2},"end":{"line":1,"character":5}}""");
        diagnostic["severity"]!.GetValue<int>().Should().Be(1);
        ((string?)diagnostic["code"]).Should().Be("bad-word");
        diagnostic["codeDescription"].Should().BeNull("the project has no public address yet, and a link that leads nowhere helps nobody");
        ((string?)diagnostic["source"]).Should().Be("techlint");
        ((string?)diagnostic["message"]).Should().Be("a bad word\ndetail of it\na-set: a source (memory)");
        diagnostic["data"]!.ToJsonString().Should().Be("""{"rule":"bad-word","at":"setups/seam"}""");

        var hover = (await client.HoverAsync(Uri, 1, 3))["result"]!;
        hover.ToJsonString().Should().Be(
            """{"contents":{"kind":"markdown","value":"**BAD**, 2026-11-24"},"range":{"start":{"line":1,"character":2},"end":{"line":1,"character":5}}}""");

        await client.ChangeAsync(Uri, 2, RawLspClient.Change(1, 2, 1, 5, "good"));
        var mended = await client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 2);
        mended["params"]!["diagnostics"]!.AsArray().Should().BeEmpty();

        await client.CloseAsync(Uri);
        await client.EndAsync();
        (await session.ExitAsync()).Should().Be(0);
    }

    [Fact]
    public async Task What_initialize_announces_is_what_there_is()
    {
        await using var session = new ServerSession();
        var result = (await session.Client.InitializeAsync())["result"]!;
        ((string?)result["serverInfo"]!["name"]).Should().Be("techlint");
        ((string?)result["serverInfo"]!["version"]).Should().MatchRegex("^[0-9]+\\.[0-9]+\\.[0-9]+$");
        result["capabilities"]!.AsObject().Select(capability => capability.Key).Should().Equal(
            "positionEncoding", "textDocumentSync", "hoverProvider", "completionProvider", "signatureHelpProvider", "definitionProvider", "referencesProvider",
            "documentHighlightProvider", "documentSymbolProvider", "workspaceSymbolProvider", "codeActionProvider", "codeLensProvider", "documentLinkProvider",
            "renameProvider", "foldingRangeProvider", "selectionRangeProvider", "semanticTokensProvider", "inlayHintProvider", "workspace",
            "documentFormattingProvider", "documentRangeFormattingProvider", "executeCommandProvider");
        result["capabilities"]!["textDocumentSync"]!.ToJsonString().Should().Be("""{"openClose":true,"change":2,"save":{"includeText":false}}""");
        result["capabilities"]!["workspace"]!.ToJsonString().Should().Be("""{"workspaceFolders":{"supported":true,"changeNotifications":true}}""");
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-8", "utf-8")]
    [InlineData("utf-16", "utf-16", "utf-8")]
    [InlineData("utf-8", "utf-32", "utf-8", "utf-16")]
    [InlineData("utf-32", "utf-32")]
    [InlineData("utf-16", "ebcdic")]
    public async Task Positions_are_counted_in_what_the_client_prefers_among_what_it_offers(string expected, params string[] offered)
    {
        await using var session = new ServerSession();
        var result = (await session.Client.InitializeAsync(null, offered))["result"]!;
        ((string?)result["capabilities"]!["positionEncoding"]).Should().Be(expected);
    }

    [Theory]
    [InlineData(true, true, 0)]
    [InlineData(false, true, 1)]
    [InlineData(true, false, 1)]
    [InlineData(false, false, 1)]
    public async Task The_exit_code_tells_whether_the_client_left_properly(bool shutdown, bool exit, int code)
    {
        await using var session = await ServerSession.StartAsync();
        if (shutdown) (await session.Client.RequestAsync("shutdown")).ToJsonString().Should().Contain("\"result\":null");
        if (exit) await session.Client.NotifyAsync("exit");
        else await session.Client.DisposeAsync();
        (await session.ExitAsync()).Should().Be(code);
    }

    [Fact]
    public async Task Exit_before_initialize_ends_the_session()
    {
        await using var session = new ServerSession();
        await session.Client.NotifyAsync("exit");
        (await session.ExitAsync()).Should().Be(1);
    }

    [Fact]
    public async Task A_caller_that_cancels_ends_the_session()
    {
        await using var session = await ServerSession.StartAsync();
        session.Cancel();
        (await session.ExitAsync()).Should().Be(1);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("[]")]
    public async Task Shutdown_takes_whatever_clients_send_along_and_is_answered_though_exit_follows_at_once(string parameters)
    {
        await using var session = await ServerSession.StartAsync();
        byte[] both =
        [
            .. RawLspClient.Frame($$"""{"jsonrpc":"2.0","id":"bye","method":"shutdown","params":{{parameters}} }"""),
            .. RawLspClient.Frame("""{"jsonrpc":"2.0","method":"exit"}"""),
        ];
        await session.Client.SendBytesAsync(both);
        (await session.ExitAsync()).Should().Be(0);
        (await session.Client.WaitAsync(message => message["id"]?.ToJsonString() == "\"bye\"")).ToJsonString().Should().Contain("\"result\":null");
    }

    [Fact]
    public async Task Files_that_are_not_ours_are_left_alone()
    {
        await using var session = await ServerSession.StartAsync();
        var client = session.Client;
        foreach (var name in new[] { "notes.yaml", "compose.yml", ".technique.yml", "technique.yaml" }) await client.OpenAsync("file:///work/" + name, "BAD");
        (await client.HoverAsync("file:///work/notes.yaml", 0, 0)).ToJsonString().Should().Contain("\"result\":null");
        await client.OpenAsync(Uri, "BAD", language: "plaintext");
        await client.DiagnosticsAsync(Uri);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().ContainSingle();
    }

    [Fact]
    public async Task Watched_files_are_registered_only_with_a_client_that_supports_it()
    {
        await using var with = new ServerSession();
        var parameters = with.Client.InitializeParams();
        parameters["capabilities"]!["workspace"] = JsonNode.Parse("""{"didChangeWatchedFiles":{"dynamicRegistration":true}}""");
        await with.Client.RequestAsync("initialize", parameters);
        await with.Client.NotifyAsync("initialized", new JsonObject());
        var registration = (await with.Client.NotificationAsync("client/registerCapability"))["params"]!["registrations"]![0]!;
        ((string?)registration["method"]).Should().Be("workspace/didChangeWatchedFiles");
        registration["registerOptions"]!["watchers"]!.AsArray().Select(watcher => (string?)watcher!["globPattern"]).Should().Equal(
            "**/*.technique.yaml", "**/*.equipment.yaml", "**/*.requirements.yaml", "**/techlint.yaml");
        await with.Client.EndAsync();
        (await with.ExitAsync()).Should().Be(0);

        await using var without = await ServerSession.StartAsync();
        await without.Client.EndAsync();
        await without.ExitAsync();
        without.Client.ReceivedOf("client/registerCapability").Should().BeEmpty();
    }

    [Fact]
    public async Task A_client_that_never_answers_the_servers_requests_is_served_all_the_same()
    {
        await using var session = new ServerSession(answersRequests: false);
        var silent = session.Client;
        var parameters = silent.InitializeParams();
        parameters["capabilities"]!["workspace"] = JsonNode.Parse("""{"didChangeWatchedFiles":{"dynamicRegistration":true}}""");
        await silent.RequestAsync("initialize", parameters);
        await silent.NotifyAsync("initialized");
        await silent.NotificationAsync("client/registerCapability");
        await silent.OpenAsync(Uri, "BAD");
        await silent.DiagnosticsAsync(Uri);
        await silent.EndAsync();
        (await session.ExitAsync()).Should().Be(0);
    }

    [Fact]
    public async Task The_day_turns_while_the_session_lasts()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.OpenAsync(Uri, "word");
        (await session.Client.HoverAsync(Uri, 0, 0)).ToJsonString().Should().Contain("2026-11-24");
        session.Today = ServerSession.Day.AddDays(1);
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.Change(0, 0, 0, 0, "x"));
        (await session.Client.HoverAsync(Uri, 0, 0)).ToJsonString().Should().Contain("**xword**, 2026-11-25");
    }
}
