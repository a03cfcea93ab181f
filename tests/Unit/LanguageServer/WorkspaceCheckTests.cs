using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>Files that nobody has open: pushed or pulled, with progress, cancelled, and never in anybody's way.</summary>
public sealed class WorkspaceCheckTests
{
    private const string Uri = "file:///work/a.technique.yaml";
    private const string Pulls = """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true}}}""";
    private const string Shows = """{"window":{"workDoneProgress":true}}""";

    [Fact]
    public async Task Findings_of_files_that_nobody_has_open_are_pushed_and_taken_back()
    {
        var engine = With(("b.technique.yaml", "BAD"), ("c.technique.yaml", "sound"));
        await using var session = await ServerSession.StartAsync(engine);
        var shown = await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml");
        shown["params"]!.AsObject().ContainsKey("version").Should().BeFalse();
        shown["params"]!["diagnostics"]!.AsArray().Should().ContainSingle();

        engine.Disk["/work/b.technique.yaml"] = "sound";
        await WatchedAsync(session, "file:///work/b.technique.yaml");
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 0);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().HaveCount(2, "a sound file that nobody has open is not spoken of");
    }

    [Fact]
    public async Task Broken_settings_that_nobody_has_open_are_shown_and_taken_back()
    {
        var engine = With(("techlint.yaml", "BAD"));
        engine.Roots.Add("/work");
        await using var session = await ServerSession.StartAsync(engine);
        const string settings = "file:///work/techlint.yaml";
        await session.Client.DiagnosticsAsync(settings, sent => sent["diagnostics"]!.AsArray().Count == 1);
        engine.Disk["/work/techlint.yaml"] = "sound";
        await WatchedAsync(session, settings);
        await session.Client.DiagnosticsAsync(settings, sent => sent["diagnostics"]!.AsArray().Count == 0);

        engine.Disk["/work/techlint.yaml"] = "BAD BAD";
        await WatchedAsync(session, settings);
        await session.Client.DiagnosticsAsync(settings, sent => sent["diagnostics"]!.AsArray().Count == 2);
        var seen = session.Client.Received.Count;
        engine.Disk.TryRemove("/work/techlint.yaml", out _);
        engine.Roots.Clear();
        await WatchedAsync(session, settings);
        await UntilAsync(() => Since(session, seen, settings).Any(sent => sent["diagnostics"]!.AsArray().Count == 0));
    }

    [Fact]
    public async Task A_closed_document_shows_what_its_file_holds_and_a_reopened_one_what_it_holds_itself()
    {
        var engine = With(("a.technique.yaml", "BAD"));
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.DiagnosticsAsync(Uri, sent => sent["diagnostics"]!.AsArray().Count == 1);
        for (var round = 1; round <= 20; round++)
        {
            var seen = session.Client.Received.Count;
            await session.Client.OpenAsync(Uri, "BAD BAD", round);
            if (round % 2 == 0) await UntilAsync(() => Since(session, seen, Uri).Any(sent => sent["diagnostics"]!.AsArray().Count == 2));
            await session.Client.CloseAsync(Uri);
            await UntilAsync(() => Since(session, seen, Uri).LastOrDefault()?["diagnostics"]!.AsArray().Count == 1);
        }

        await session.Client.OpenAsync(Uri, "sound", 99);
        await session.Client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 99);
        await session.Client.HoverAsync(Uri, 0, 0);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Last()["params"]!["diagnostics"]!.AsArray().Should().BeEmpty();
    }

    [Fact]
    public async Task A_folder_that_goes_takes_its_findings_along_and_one_that_comes_brings_them()
    {
        var engine = With(("b.technique.yaml", "BAD"));
        engine.Disk["/other/c.technique.yaml"] = "BAD";
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 1);
        await session.Client.NotifyAsync("workspace/didChangeWorkspaceFolders", JsonNode.Parse(
            """{"event":{"added":[{"uri":"file:///other","name":"other"}],"removed":[{"uri":"file:///work","name":"work"}]}}"""));
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 0);
        await session.Client.DiagnosticsAsync("file:///other/c.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 1);
    }

    [Fact]
    public async Task What_merely_lies_beside_an_open_document_is_nobodys_business()
    {
        var engine = new FakeWorkspaces();
        engine.Disk["/home/b.technique.yaml"] = "BAD";
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.OpenAsync("file:///home/a.technique.yaml", "BAD");
        await session.Client.DiagnosticsAsync("file:///home/a.technique.yaml");
        await session.Client.CloseAsync("file:///home/a.technique.yaml");
        await session.Client.OpenAsync(Uri, "BAD");
        await session.Client.DiagnosticsAsync(Uri);
        session.Client.Received.Should().NotContain(message => message.ToJsonString().Contains("/home/b", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_client_may_want_nothing_of_files_that_it_has_not_opened_but_the_settings()
    {
        var engine = With(("b.technique.yaml", "BAD"), ("techlint.yaml", "BAD"));
        engine.Roots.Add("/work");
        await using var session = new ServerSession(engine);
        await InitializeAsync(session, "{}", """{"workspaceDiagnostics":false}""");
        await session.Client.DiagnosticsAsync("file:///work/techlint.yaml");
        await session.Client.NotifyAsync("workspace/didChangeConfiguration", JsonNode.Parse("""{"settings":{"techlint":{"workspaceDiagnostics":true}}}"""));
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 1);
        await session.Client.NotifyAsync("workspace/didChangeConfiguration", JsonNode.Parse("""{"settings":{"techlint":{"workspaceDiagnostics":false}}}"""));
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml", sent => sent["diagnostics"]!.AsArray().Count == 0);
    }

    [Fact]
    public async Task The_servers_own_check_tells_its_progress_to_a_client_that_shows_it()
    {
        var engine = With([.. Enumerable.Range(100, 40).Select(number => ($"t{number}.technique.yaml", "BAD"))]);
        using var release = new ManualResetEventSlim();
        engine.OnCheck = (path, _) =>
        {
            if (path.StartsWith("t105", StringComparison.Ordinal)) release.Wait(RawLspClient.Patience, CancellationToken.None);
        };
        await using var session = new ServerSession(engine);
        await InitializeAsync(session, Shows);
        await session.Client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "begin");
        release.Set();
        var created = await session.Client.NotificationAsync("window/workDoneProgress/create");
        var token = (string)created["params"]!["token"]!;
        await session.Client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "end");
        var steps = session.Client.ReceivedOf("$/progress").Select(sent => sent["params"]!).ToList();
        steps.Should().OnlyContain(step => (string?)step["token"] == token);
        ShouldBeAProgress([.. steps.Select(step => step["value"]!)]);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().HaveCount(40);
    }

    [Fact]
    public async Task The_client_may_end_the_servers_own_check()
    {
        var engine = With([.. Enumerable.Range(100, 40).Select(number => ($"t{number}.technique.yaml", "BAD"))]);
        using var release = new ManualResetEventSlim();
        engine.OnCheck = (path, token) =>
        {
            if (path.StartsWith("t110", StringComparison.Ordinal)) WaitHandle.WaitAny([release.WaitHandle, token.WaitHandle], RawLspClient.Patience);
        };
        await using var session = new ServerSession(engine);
        await InitializeAsync(session, Shows);
        await session.Client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "begin");
        var token = (string)(await session.Client.NotificationAsync("window/workDoneProgress/create"))["params"]!["token"]!;
        await session.Client.NotifyAsync("window/workDoneProgress/cancel", new JsonObject { ["token"] = token });
        await session.Client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "end");
        release.Set();
        await session.Client.OpenAsync(Uri, "BAD");
        await session.Client.DiagnosticsAsync(Uri);
        engine.Checked.Keys.Should().NotContain("t139.technique.yaml", "what the client has ended rests until there is a new reason");
        await WatchedAsync(session, "file:///work/t100.technique.yaml");
        await UntilAsync(() => engine.Checked.ContainsKey("t139.technique.yaml"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_client_that_refuses_progress_or_never_answers_still_gets_the_findings(bool answers)
    {
        var engine = With([.. Enumerable.Range(100, 40).Select(number => ($"t{number}.technique.yaml", "BAD"))]);
        await using var session = new ServerSession(engine, answersRequests: false);
        if (answers)
        {
            _ = Task.Run(async () =>
            {
                var asked = await session.Client.NotificationAsync("window/workDoneProgress/create");
                await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","id":{{asked["id"]!.ToJsonString()}},"error":{"code":-32601,"message":"no"} }""");
            }, TestContext.Current.CancellationToken);
        }

        await InitializeAsync(session, Shows);
        await session.Client.DiagnosticsAsync("file:///work/t139.technique.yaml");
        session.Client.ReceivedOf("$/progress").Should().BeEmpty();
    }

    [Theory]
    [InlineData("7")]
    [InlineData("\"seven\"")]
    public async Task A_pulled_check_tells_its_progress_and_its_pieces_under_the_clients_tokens(string token)
    {
        var engine = With([.. Enumerable.Range(100, 40).Select(number => ($"t{number}.technique.yaml", "BAD"))]);
        await using var session = new ServerSession(engine);
        await InitializeAsync(session, Pulls);
        var id = await session.Client.BeginAsync("workspace/diagnostic", JsonNode.Parse(
            $$"""{"previousResultIds":[],"workDoneToken":{{token}},"partialResultToken":"pieces"}"""));
        var answer = await session.Client.ResponseAsync(id);
        answer["result"]!.ToJsonString().Should().Be("""{"items":[]}""");
        var received = session.Client.Received.ToList();
        var steps = received.Where(message => (string?)message["method"] == "$/progress").Select(message => message["params"]!).ToList();
        ShouldBeAProgress([.. steps.Where(step => step["token"]!.ToJsonString() == token).Select(step => step["value"]!)]);
        steps.Where(step => step["token"]!.ToJsonString() == "\"pieces\"").SelectMany(step => step["value"]!["items"]!.AsArray())
            .Select(item => (string?)item!["uri"]).Should().HaveCount(40).And.OnlyHaveUniqueItems();
        received.FindLastIndex(message => (string?)message["method"] == "$/progress").Should().BeLessThan(received.IndexOf(answer), "the answer is the last word");
    }

    [Theory]
    [InlineData("$/cancelRequest")]
    [InlineData("window/workDoneProgress/cancel")]
    public async Task A_pulled_check_can_be_cancelled_by_its_id_and_by_its_token_and_nothing_else_waits_for_it(string method)
    {
        var engine = With([.. Enumerable.Range(100, 40).Select(number => ($"t{number}.technique.yaml", "BAD"))]);
        var stopped = new TaskCompletionSource();
        engine.OnCheck = (path, token) =>
        {
            if (path.StartsWith("t110", StringComparison.Ordinal) && token.WaitHandle.WaitOne(RawLspClient.Patience)) stopped.TrySetResult();
        };
        await using var session = new ServerSession(engine);
        await InitializeAsync(session, Pulls);
        var id = await session.Client.BeginAsync("workspace/diagnostic", JsonNode.Parse("""{"previousResultIds":[],"workDoneToken":"w"}"""));
        await session.Client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "begin");

        // The check cannot go on, and everything else does.
        await session.Client.OpenAsync(Uri, "word");
        (await session.Client.HoverAsync(Uri, 0, 1))["result"]!.ToJsonString().Should().Contain("**word**");
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.WholeText("other"));
        (await session.Client.HoverAsync(Uri, 0, 1))["result"]!.ToJsonString().Should().Contain("**other**");
        session.Client.Received.Should().NotContain(message => message["method"] == null && message["id"]!.ToJsonString() == id.ToString());

        await session.Client.NotifyAsync(method, method[0] == '$' ? new JsonObject { ["id"] = id } : new JsonObject { ["token"] = "w" });
        (await session.Client.ResponseAsync(id))["error"]!["code"]!.GetValue<int>().Should().Be(-32800);
        await stopped.Task.WaitAsync(RawLspClient.Patience, TestContext.Current.CancellationToken);
        var received = session.Client.Received.ToList();
        received.FindIndex(message => (string?)message["params"]?["value"]?["kind"] == "end").Should()
            .BeInRange(0, received.FindIndex(message => message["method"] == null && message["id"]!.ToJsonString() == id.ToString()));
    }

    [Fact]
    public async Task Refreshes_go_only_to_clients_that_support_them_and_are_never_waited_for()
    {
        await using var session = new ServerSession(answersRequests: false);
        await InitializeAsync(session, """
            {"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true},"inlayHint":{"refreshSupport":true},"codeLens":{"refreshSupport":true} }}
            """);
        await session.Client.OpenAsync(Uri, "LIB");
        await session.Client.OpenAsync("file:///work/lib.equipment.yaml", "BROKEN");
        foreach (var method in new[] { "workspace/diagnostic/refresh", "workspace/inlayHint/refresh", "workspace/codeLens/refresh" })
        {
            var sent = await session.Client.WaitAsync(message => (string?)message["method"] == method);
            sent["id"].Should().NotBeNull();
            sent["params"].Should().BeNull("the protocol gives it no parameters");
        }

        (await session.Client.HoverAsync(Uri, 0, 0))["result"].Should().NotBeNull();

        await using var plain = await ServerSession.StartAsync();
        await plain.Client.OpenAsync(Uri, "LIB");
        await plain.Client.OpenAsync("file:///work/lib.equipment.yaml", "BROKEN");
        await plain.Client.DiagnosticsAsync(Uri, sent => sent["diagnostics"]!.AsArray().Count == 1);
        plain.Client.Received.Should().NotContain(message => message["method"] != null && ((string)message["method"]!).EndsWith("/refresh", StringComparison.Ordinal));
    }

    private static FakeWorkspaces With(params (string Path, string Text)[] files)
    {
        var engine = new FakeWorkspaces();
        foreach (var (path, text) in files) engine.Disk["/work/" + path] = text;
        return engine;
    }

    private static async Task InitializeAsync(ServerSession session, string capabilities, string? options = null)
    {
        var parameters = session.Client.InitializeParams("file:///work");
        parameters["capabilities"] = JsonNode.Parse(capabilities);
        if (options is not null) parameters["initializationOptions"] = JsonNode.Parse(options);
        await session.Client.RequestAsync("initialize", parameters);
        await session.Client.NotifyAsync("initialized", new JsonObject());
    }

    private static Task WatchedAsync(ServerSession session, string uri) => session.Client.NotifyAsync(
        "workspace/didChangeWatchedFiles", JsonNode.Parse($$"""{"changes":[{"uri":"{{uri}}","type":2}]}"""));

    private static void ShouldBeAProgress(List<JsonNode> steps)
    {
        ((string?)steps[0]["kind"]).Should().Be("begin");
        ((string?)steps[0]["title"]).Should().NotBeNullOrEmpty();
        steps.Skip(1).SkipLast(1).Should().OnlyContain(step => (string?)step["kind"] == "report");
        steps.SkipLast(1).Select(step => (int)step["percentage"]!).Should().BeInAscendingOrder().And.OnlyContain(percentage => percentage >= 0 && percentage <= 100);
        ((string?)steps[^1]["kind"]).Should().Be("end");
    }

    private static List<JsonObject> Since(ServerSession session, int seen, string uri) =>
        [.. session.Client.Received.Skip(seen).Where(message => (string?)message["method"] == "textDocument/publishDiagnostics")
            .Select(message => (JsonObject)message["params"]!).Where(sent => (string?)sent["uri"] == uri)];

    private static async Task UntilAsync(Func<bool> isSo)
    {
        var until = Environment.TickCount64 + (long)RawLspClient.Patience.TotalMilliseconds;
        while (!isSo())
        {
            (Environment.TickCount64 < until).Should().BeTrue("what was waited for should have come");
            await Task.Delay(5);
        }
    }
}
