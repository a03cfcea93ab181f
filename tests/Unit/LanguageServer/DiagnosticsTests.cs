using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class DiagnosticsTests
{
    private const string Uri = "file:///work/a.technique.yaml";
    private const string LibraryUri = "file:///work/lib.equipment.yaml";

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-8")]
    [InlineData("utf-32")]
    public async Task A_thousand_rapid_edits_are_applied_in_order_and_only_newer_results_follow(string encoding)
    {
        await using var session = await ServerSession.StartAsync(null, encoding);
        var client = session.Client;
        var lines = new List<string> { "" };
        await client.OpenAsync(Uri, "", 1);
        var random = new Random(20261124);
        string[] words = ["a", "BAD ", "é", "😀", "語", "\r\n", "\n", "x: "];
        for (var version = 2; version <= 1001; version++)
        {
            // An editor kept as lines, so that the expected text owes nothing to offsets.
            var at = random.Next(lines.Count);
            var line = lines[at].TrimEnd('\r');
            var cut = random.Next(line.Length + 1);
            if (cut > 0 && cut < line.Length && char.IsLowSurrogate(line[cut])) cut--;
            var word = words[random.Next(words.Length)];
            var column = Units(line[..cut], encoding);
            await client.ChangeAsync(Uri, version, RawLspClient.Change(at, column, at, column, word));
            var parts = (lines[at][..cut] + word + lines[at][cut..]).Split('\n');
            lines.RemoveAt(at);
            lines.InsertRange(at, parts);
        }

        await client.ChangeAsync(Uri, 1002, RawLspClient.Change(0, 0, 0, 0, "BAD BAD BAD BAD "));
        await client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 1002);
        session.Engine.Checked["a.technique.yaml"].Should().Be("BAD BAD BAD BAD " + string.Join('\n', lines));
        client.ReceivedOf("textDocument/publishDiagnostics").Select(sent => (int)sent["params"]!["version"]!).Should().BeInAscendingOrder().And.OnlyHaveUniqueItems();
    }

    [Fact]
    public async Task A_result_for_an_older_text_is_never_published()
    {
        await using var session = await ServerSession.StartAsync();
        using var release = new ManualResetEventSlim();
        using var started = new ManualResetEventSlim();
        var isFirst = true;
        session.Engine.OnCheck = (_, _) =>
        {
            if (!isFirst) return;
            isFirst = false;
            started.Set();
            // A check that does not heed its token ends after the edit that outdated it.
            release.Wait(RawLspClient.Patience, CancellationToken.None);
        };
        await session.Client.OpenAsync(Uri, "BAD", 1);
        started.Wait(RawLspClient.Patience, TestContext.Current.CancellationToken).Should().BeTrue();
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.WholeText("BAD BAD"));
        await session.Client.HoverAsync(Uri, 0, 0);
        release.Set();
        await session.Client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 2);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().ContainSingle();
    }

    [Fact]
    public async Task A_check_that_is_outdated_is_told_to_end()
    {
        await using var session = await ServerSession.StartAsync();
        var ended = new TaskCompletionSource();
        var started = new TaskCompletionSource();
        var isFirst = true;
        session.Engine.OnCheck = (_, token) =>
        {
            if (!isFirst) return;
            isFirst = false;
            started.SetResult();
            if (token.WaitHandle.WaitOne(RawLspClient.Patience)) ended.SetResult();
        };
        await session.Client.OpenAsync(Uri, "BAD", 1);
        await started.Task.WaitAsync(RawLspClient.Patience, TestContext.Current.CancellationToken);
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.WholeText("BAD BAD"));
        await ended.Task.WaitAsync(RawLspClient.Patience, TestContext.Current.CancellationToken);
        await session.Client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 2);
    }

    [Fact]
    public async Task What_has_not_changed_is_not_published_again()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.OpenAsync(Uri, "BAD x", 1);
        await session.Client.DiagnosticsAsync(Uri);
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.Change(0, 5, 0, 5, "y"));
        await UntilAsync(() => session.Engine.Checked["a.technique.yaml"] == "BAD xy");
        await session.Client.ChangeAsync(Uri, 3, RawLspClient.Change(0, 6, 0, 6, " BAD"));
        await session.Client.DiagnosticsAsync(Uri, sent => (int?)sent["version"] == 3);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Select(sent => (int)sent["params"]!["version"]!).Should().Equal(1, 3);
    }

    [Fact]
    public async Task Opening_publishes_even_what_is_sound()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.OpenAsync(Uri, "sound", 4);
        var sent = (await session.Client.DiagnosticsAsync(Uri))["params"]!;
        sent["version"]!.GetValue<int>().Should().Be(4);
        sent["diagnostics"]!.AsArray().Should().BeEmpty();
    }

    [Fact]
    public async Task Closing_clears_and_reopening_shows_again()
    {
        await using var session = await ServerSession.StartAsync();
        for (var round = 1; round <= 3; round++)
        {
            var seen = session.Client.Received.Count;
            await session.Client.OpenAsync(Uri, "BAD", round);
            await UntilAsync(() => Since(session, seen).Any(sent => sent["diagnostics"]!.AsArray().Count == 1));
            await session.Client.CloseAsync(Uri);
            await UntilAsync(() => Since(session, seen).LastOrDefault() is { } last && last["diagnostics"]!.AsArray().Count == 0);
            Since(session, seen).Last().ContainsKey("version").Should().BeFalse();
        }
    }

    [Fact]
    public async Task Closing_while_a_check_runs_leaves_nothing_behind()
    {
        await using var session = await ServerSession.StartAsync();
        using var release = new ManualResetEventSlim();
        using var started = new ManualResetEventSlim();
        session.Engine.OnCheck = (_, _) =>
        {
            started.Set();
            release.Wait(RawLspClient.Patience, CancellationToken.None);
        };
        await session.Client.OpenAsync(Uri, "BAD");
        started.Wait(RawLspClient.Patience, TestContext.Current.CancellationToken).Should().BeTrue();
        await session.Client.CloseAsync(Uri);
        (await session.Client.HoverAsync(Uri, 0, 0)).ToJsonString().Should().Contain("\"result\":null");
        release.Set();
        await session.Client.DiagnosticsAsync(Uri);
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().OnlyContain(sent => sent["params"]!["diagnostics"]!.AsArray().Count == 0);
    }

    [Fact]
    public async Task Open_documents_that_depend_on_an_edited_one_follow_after_a_quiet_time_and_related_places_are_linked()
    {
        await using var session = await ServerSession.StartAsync();
        var client = session.Client;
        await client.OpenAsync(Uri, "LIB", 1);
        await client.OpenAsync(LibraryUri, "sound", 1);
        await client.DiagnosticsAsync(Uri);
        await client.DiagnosticsAsync(LibraryUri);
        await client.ChangeAsync(LibraryUri, 2, RawLspClient.WholeText("😀 BROKEN"));
        var sent = (await client.DiagnosticsAsync(Uri, shown => shown["diagnostics"]!.AsArray().Count == 1))["params"]!;
        sent["version"]!.GetValue<int>().Should().Be(1);
        sent["diagnostics"]![0]!["relatedInformation"]!.ToJsonString().Should().Be(
            """[{"location":{"uri":"file:///work/lib.equipment.yaml","range":{"start":{"line":0,"character":3},"end":{"line":0,"character":9}}},"message":"here"}]""");

        await client.CloseAsync(LibraryUri);
        await UntilAsync(() => client.ReceivedOf("textDocument/publishDiagnostics")
            .Last(shown => (string?)shown["params"]!["uri"] == Uri)["params"]!["diagnostics"]!.AsArray().Count == 0);
    }

    [Fact]
    public async Task A_place_in_a_file_that_is_not_open_is_linked_by_its_address()
    {
        var engine = new FakeWorkspaces();
        engine.Disk["/work/my welds/lib.equipment.yaml"] = "\uFEFFBROKEN";
        engine.Roots.Add("/work/my welds");
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.OpenAsync("file:///work/my%20welds/a.technique.yaml", "LIB");
        var sent = await session.Client.DiagnosticsAsync("file:///work/my%20welds/a.technique.yaml");
        sent["params"]!["diagnostics"]![0]!["relatedInformation"]![0]!["location"]!.ToJsonString().Should().Be(
            """{"uri":"file:///work/my%20welds/lib.equipment.yaml","range":{"start":{"line":0,"character":0},"end":{"line":0,"character":6}}}""");
    }

    [Fact]
    public async Task An_unused_definition_is_tagged_and_a_note_is_information()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.OpenAsync(Uri, "unused");
        var diagnostic = (await session.Client.DiagnosticsAsync(Uri))["params"]!["diagnostics"]![0]!;
        diagnostic["tags"]!.ToJsonString().Should().Be("[1]");
        diagnostic["severity"]!.GetValue<int>().Should().Be(3);
    }

    [Fact]
    public async Task One_document_that_cannot_be_checked_does_not_cost_the_others_theirs()
    {
        await using var session = await ServerSession.StartAsync();
        session.Engine.OnCheck = (path, _) =>
        {
            if (path.StartsWith('a')) throw new InvalidOperationException("secret");
        };
        await session.Client.OpenAsync(Uri, "BAD");
        await session.Client.OpenAsync("file:///work/b.technique.yaml", "BAD");
        await session.Client.DiagnosticsAsync("file:///work/b.technique.yaml");
        var told = await session.Client.NotificationAsync("window/logMessage");
        told["params"]!.ToJsonString().Should().Be("""{"type":1,"message":"a.technique.yaml could not be checked: an error inside techlint"}""");
    }

    [Fact]
    public async Task Each_document_belongs_to_the_nearest_settings_file_else_the_clients_folder_else_its_own()
    {
        var engine = new FakeWorkspaces();
        engine.Roots.Add("/work/flawed");
        await using var session = await ServerSession.StartAsync(engine);
        string[] uris =
            ["file:///work/sound/a.technique.yaml", "file:///work/flawed/deep/a.technique.yaml", "file:///elsewhere/a.technique.yaml", "untitled:a.technique.yaml", Uri];
        foreach (var uri in uris)
        {
            await session.Client.OpenAsync(uri, "BAD");
            await session.Client.DiagnosticsAsync(uri, sent => sent["diagnostics"]!.AsArray().Count == 1);
        }

        engine.OpenedOnce().Should().Equal("/work", "/work/flawed", "/elsewhere", null);
        engine.Checked.Keys.Should().BeEquivalentTo("sound/a.technique.yaml", "deep/a.technique.yaml", "a.technique.yaml");
    }

    [Fact]
    public async Task A_settings_file_that_comes_into_being_makes_a_new_workspace_of_open_documents()
    {
        var engine = new FakeWorkspaces();
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.OpenAsync("file:///work/sub/a.technique.yaml", "BAD");
        await session.Client.DiagnosticsAsync("file:///work/sub/a.technique.yaml");
        engine.Roots.Add("/work/sub");
        await session.Client.NotifyAsync("workspace/didChangeWatchedFiles", JsonNode.Parse("""{"changes":[{"uri":"file:///work/sub/techlint.yaml","type":1}]}"""));
        await UntilAsync(() => engine.Checked.ContainsKey("a.technique.yaml"));
        engine.OpenedOnce().Should().Equal("/work", "/work/sub");
    }

    [Fact]
    public async Task Folders_may_come_and_go()
    {
        var engine = new FakeWorkspaces();
        await using var session = await ServerSession.StartAsync(engine);
        await session.Client.OpenAsync("file:///other/sub/a.technique.yaml", "BAD");
        await session.Client.DiagnosticsAsync("file:///other/sub/a.technique.yaml");
        await session.Client.NotifyAsync("workspace/didChangeWorkspaceFolders", JsonNode.Parse(
            """{"event":{"added":[{"uri":"file:///other","name":"other"}],"removed":[{"uri":"file:///work","name":"work"}]}}"""));
        await UntilAsync(() => engine.Checked.ContainsKey("sub/a.technique.yaml"));
        engine.OpenedOnce().Should().BeEquivalentTo("/work", "/other/sub", "/other");
    }

    [Fact]
    public async Task Every_spelling_of_an_address_means_the_same_document_and_answers_bear_the_clients_own()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.OpenAsync("file:///work/my%20weld%c3%a9.technique.yaml", "BAD");
        await session.Client.DiagnosticsAsync("file:///work/my%20weld%c3%a9.technique.yaml");
        await session.Client.ChangeAsync("file:///work/my weldé.technique.yaml", 2, RawLspClient.WholeText("BAD BAD"));
        await session.Client.DiagnosticsAsync("file:///work/my%20weld%c3%a9.technique.yaml", sent => (int?)sent["version"] == 2);
    }

    private static int Units(string text, string encoding) => encoding switch
    {
        "utf-8" => System.Text.Encoding.UTF8.GetByteCount(text),
        "utf-32" => text.EnumerateRunes().Count(),
        _ => text.Length,
    };

    private static List<JsonObject> Since(ServerSession session, int seen) =>
        [.. session.Client.Received.Skip(seen).Where(message => (string?)message["method"] == "textDocument/publishDiagnostics").Select(message => (JsonObject)message["params"]!)];

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
