using System.Text;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class TransportTests
{
    private const string Uri = "file:///work/a.technique.yaml";

    [Theory]
    [InlineData("content-length")]
    [InlineData("CONTENT-LENGTH")]
    [InlineData("X-Trace: 7\r\nContent-Type: application/vscode-jsonrpc; charset=utf8\r\nContent-length")]
    public async Task Headers_are_read_in_any_case_and_unknown_ones_tolerated(string header)
    {
        await using var session = new ServerSession();
        await session.Client.SendBytesAsync(RawLspClient.Frame(
            """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}""", header));
        (await session.Client.ResponseAsync(1))["result"].Should().NotBeNull();
    }

    [Fact]
    public async Task Bare_line_feeds_and_blank_lines_between_messages_are_tolerated()
    {
        await using var session = new ServerSession();
        const string body = """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}""";
        await session.Client.SendBytesAsync(Encoding.ASCII.GetBytes($"\r\n\nContent-Length: {body.Length}\n\n{body}"));
        (await session.Client.ResponseAsync(1))["result"].Should().NotBeNull();
    }

    [Theory]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":5,", -32700)]
    [InlineData("", -32700)]
    [InlineData("{} {}", -32700)]
    [InlineData("[]", -32600)]
    [InlineData("[{\"jsonrpc\":\"2.0\",\"id\":5,\"method\":\"shutdown\"}]", -32600)]
    [InlineData("null", -32600)]
    [InlineData("7", -32600)]
    [InlineData("{}", -32600)]
    [InlineData("{\"jsonrpc\":\"1.0\",\"id\":null,\"method\":\"shutdown\"}", -32600)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":{},\"method\":\"shutdown\"}", -32600)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":1.5,\"method\":\"shutdown\"}", -32600)]
    [InlineData("{\"jsonrpc\":\"2.0\",\"method\":3}", -32600)]
    public async Task A_message_that_cannot_be_read_is_answered_and_the_session_goes_on(string body, int code)
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendJsonAsync(body);
        var answer = await session.Client.WaitAsync(message => message["error"] is not null);
        answer["error"]!["code"]!.GetValue<int>().Should().Be(code);
        answer.ContainsKey("id").Should().BeTrue();
        answer["id"].Should().BeNull();
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task Nesting_without_end_is_answered()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","id":5,"method":"a","params":{{new string('[', 100_000) + new string(']', 100_000)}} }""");
        (await session.Client.WaitAsync(message => message["error"] is not null))["error"]!["code"]!.GetValue<int>().Should().Be(-32700);
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task A_message_over_the_limit_is_answered_and_passed_over()
    {
        await using var session = await ServerSession.StartAsync();
        var text = new string('x', 2 * 1024 * 1024);
        await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","id":5,"method":"textDocument/hover","params":{"text":"{{text}}"} }""");
        var answer = await session.Client.WaitAsync(message => message["error"] is not null);
        answer["error"]!["code"]!.GetValue<int>().Should().Be(-32600);
        ((string?)answer["error"]!["message"]).Should().Be("The message is larger than 1048576 bytes");
        await ShouldStillServeAsync(session);
    }

    [Theory]
    [InlineData("Content-Length: -5\r\n\r\n")]
    [InlineData("Content-Length: many\r\n\r\n")]
    [InlineData("Content-Length: 99999999999999999999999\r\n\r\n")]
    [InlineData("Content-Type: text\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: a\r\n\r\n")]
    public async Task A_header_that_cannot_be_used_is_answered_and_passed_over(string header)
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendBytesAsync(Encoding.ASCII.GetBytes(header));
        (await session.Client.WaitAsync(message => message["error"] is not null))["error"]!["code"]!.GetValue<int>().Should().Be(-32700);
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task A_header_line_without_end_takes_no_memory_without_end()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendBytesAsync(Encoding.ASCII.GetBytes(new string('h', 3_000_000) + "\r\n\r\n"));
        await session.Client.WaitAsync(message => message["error"] is not null);
        await ShouldStillServeAsync(session);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(int.MaxValue)]
    public async Task Packets_may_be_split_and_joined_anywhere(int size)
    {
        await using var session = new ServerSession();
        byte[] all =
        [
            .. RawLspClient.Frame("""{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}"""),
            .. RawLspClient.Frame("""{"jsonrpc":"2.0","method":"initialized","params":{}}"""),
            .. RawLspClient.Frame(
                """{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///work/a.technique.yaml","languageId":"yaml","version":1,"text":"é BAD 😀"}}}"""),
            .. RawLspClient.Frame("""{"jsonrpc":"2.0","id":2,"method":"shutdown"}"""),
        ];
        for (var at = 0; at < all.Length; at += Math.Min(size, all.Length)) await session.Client.SendBytesAsync(all.AsMemory(at, Math.Min(size, all.Length - at)));
        await session.Client.ResponseAsync(2);
        await session.Client.DiagnosticsAsync(Uri, sent => sent["diagnostics"]!.AsArray().Count == 1);
    }

    [Fact]
    public async Task Before_initialize_requests_are_refused_and_notifications_dropped()
    {
        await using var session = new ServerSession();
        await session.Client.OpenAsync(Uri, "BAD");
        foreach (var method in new[] { "textDocument/hover", "shutdown", "no/such" })
        {
            (await session.Client.RequestAsync(method))["error"]!["code"]!.GetValue<int>().Should().Be(-32002);
        }

        await session.Client.InitializeAsync();
        (await session.Client.HoverAsync(Uri, 0, 0)).ToJsonString().Should().Contain("\"result\":null");
    }

    [Fact]
    public async Task An_initialize_that_fails_may_be_tried_again_but_not_one_that_was_served()
    {
        await using var session = new ServerSession();
        (await session.Client.RequestAsync("initialize"))["error"]!["code"]!.GetValue<int>().Should().Be(-32602);
        (await session.Client.RequestAsync("textDocument/hover"))["error"]!["code"]!.GetValue<int>().Should().Be(-32002);
        (await session.Client.InitializeAsync())["result"].Should().NotBeNull();
        (await session.Client.InitializeAsync())["error"]!["code"]!.GetValue<int>().Should().Be(-32600);
    }

    [Fact]
    public async Task After_shutdown_requests_are_refused_and_notifications_dropped()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.RequestAsync("shutdown");
        await session.Client.OpenAsync(Uri, "BAD");
        (await session.Client.HoverAsync(Uri, 0, 0))["error"]!["code"]!.GetValue<int>().Should().Be(-32600);
        (await session.Client.RequestAsync("shutdown"))["error"]!["code"]!.GetValue<int>().Should().Be(-32600);
        await session.Client.NotifyAsync("exit");
        (await session.ExitAsync()).Should().Be(0);
        session.Engine.Checked.Should().BeEmpty();
    }

    [Fact]
    public async Task Unknown_requests_are_not_found_and_unknown_notifications_ignored()
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","method":"$/setTrace","params":{"value":"verbose"}}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","method":"$/whatever"}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","method":"workspace/didChangeConfiguration","params":{"settings":null}}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","method":"no/such","params":[1]}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","id":77,"result":null}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","id":78,"error":{"code":-1,"message":"no"}}""");
        await session.Client.SendJsonAsync("""{"jsonrpc":"2.0","id":79,"error":"text"}""");
        foreach (var method in new[] { "textDocument/moniker", "$/request", "no/such", "$/cancelRequest", "Initialized", "ShutdownAsync", "HoverAsync" })
        {
            (await session.Client.RequestAsync(method, new System.Text.Json.Nodes.JsonObject()))["error"]!["code"]!.GetValue<int>().Should().Be(-32601, method);
        }

        await ShouldStillServeAsync(session);
    }

    [Theory]
    [InlineData("")]
    [InlineData(",\"params\":null")]
    [InlineData(",\"params\":{}")]
    [InlineData(",\"params\":[]")]
    [InlineData(",\"params\":\"text\"")]
    [InlineData(",\"params\":{\"textDocument\":null,\"position\":null}")]
    [InlineData(",\"params\":{\"textDocument\":{\"uri\":7},\"position\":{\"line\":0,\"character\":0}}")]
    [InlineData(",\"params\":{\"textDocument\":{\"uri\":\"file:///a\"},\"position\":{\"line\":\"x\",\"character\":0}}")]
    [InlineData(",\"params\":{\"textDocument\":{\"uri\":\"no uri\"},\"position\":{\"line\":0,\"character\":0}}")]
    public async Task Parameters_that_are_missing_or_cannot_be_read_are_invalid(string parameters)
    {
        await using var session = await ServerSession.StartAsync();
        await session.Client.SendJsonAsync("{\"jsonrpc\":\"2.0\",\"id\":900,\"method\":\"textDocument/hover\"" + parameters + "}");
        var answer = await session.Client.ResponseAsync(900);
        answer["error"]!["code"]!.GetValue<int>().Should().Be(-32602);
        ShouldTellNothingOfTheInside(answer.ToJsonString());
        await ShouldStillServeAsync(session);
    }

    [Theory]
    [InlineData("textDocument/didOpen")]
    [InlineData("textDocument/didChange")]
    [InlineData("textDocument/didClose")]
    [InlineData("textDocument/didSave")]
    [InlineData("workspace/didChangeWatchedFiles")]
    [InlineData("workspace/didChangeWorkspaceFolders")]
    [InlineData("$/cancelRequest")]
    [InlineData("initialized")]
    public async Task Notifications_with_nonsense_for_parameters_are_passed_over(string method)
    {
        await using var session = await ServerSession.StartAsync();
        string[] nonsense =
        [
            "null", "{}", "[]", "3", "{\"id\":{}}", "{\"textDocument\":null}", "{\"textDocument\":{\"uri\":null}}", "{\"textDocument\":{\"uri\":\"::\"}}",
            "{\"textDocument\":{\"uri\":\"file:///work/b.technique.yaml\"},\"contentChanges\":[null]}", "{\"textDocument\":[]}",
            "{\"changes\":[null,{\"uri\":null}]}", "{\"event\":{\"added\":[null],\"removed\":[{\"uri\":\"x\"}]}}", "{\"changes\":3}",
        ];
        foreach (var parameters in nonsense) await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","method":"{{method}}","params":{{parameters}} }""");
        await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","method":"{{method}}"}""");
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task An_error_inside_tells_nothing_of_the_inside()
    {
        await using var session = await ServerSession.StartAsync();
        session.Engine.OnHover = () => throw new InvalidOperationException("secret of the house");
        await session.Client.OpenAsync(Uri, "word");
        var answer = await session.Client.HoverAsync(Uri, 0, 0);
        answer["error"]!["code"]!.GetValue<int>().Should().Be(-32603);
        ShouldTellNothingOfTheInside(answer.ToJsonString());
        session.Engine.OnHover = null;
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task A_request_can_be_cancelled()
    {
        await using var session = await ServerSession.StartAsync();
        using var release = new ManualResetEventSlim();
        session.Engine.OnHover = () => release.Wait(RawLspClient.Patience);
        await session.Client.OpenAsync(Uri, "word");
        var id = await session.Client.BeginAsync("textDocument/hover", RawLspClient.At(Uri, 0, 0));
        await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":{{id}} } }""");
        (await session.Client.ResponseAsync(id))["error"]!["code"]!.GetValue<int>().Should().Be(-32800);
        release.Set();
        session.Engine.OnHover = null;
        await ShouldStillServeAsync(session);
    }

    [Fact]
    public async Task A_request_whose_document_changes_ends_early()
    {
        await using var session = await ServerSession.StartAsync();
        using var release = new ManualResetEventSlim();
        session.Engine.OnHover = () => release.Wait(RawLspClient.Patience);
        await session.Client.OpenAsync(Uri, "word");
        var id = await session.Client.BeginAsync("textDocument/hover", RawLspClient.At(Uri, 0, 0));
        await session.Client.ChangeAsync(Uri, 2, RawLspClient.WholeText("other"));
        (await session.Client.ResponseAsync(id))["error"]!["code"]!.GetValue<int>().Should().Be(-32801);
        release.Set();
    }

    [Fact]
    public async Task An_id_that_is_still_in_use_is_refused()
    {
        await using var session = await ServerSession.StartAsync();
        using var release = new ManualResetEventSlim();
        session.Engine.OnHover = () => release.Wait(RawLspClient.Patience);
        await session.Client.OpenAsync(Uri, "word");
        var id = await session.Client.BeginAsync("textDocument/hover", RawLspClient.At(Uri, 0, 0));
        await session.Client.SendJsonAsync($$"""{"jsonrpc":"2.0","id":{{id}},"method":"no/such"}""");
        (await session.Client.ResponseAsync(id))["error"]!["code"]!.GetValue<int>().Should().Be(-32600);
        release.Set();
        await session.Client.WaitAsync(message => message["result"] is not null && message["id"]!.ToJsonString() == id.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Bytes_that_are_no_text_and_halves_of_characters_cost_nothing_but_themselves()
    {
        await using var session = await ServerSession.StartAsync();
        const string open = """{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///work/a.technique.yaml","languageId":"yaml","version":1,"text":"@ \\ud83d \ud83d\ude00 \uDE00 \ud83d BAD"}}}""";
        var body = Encoding.UTF8.GetBytes(open);
        body[Array.IndexOf(body, (byte)'@')] = 0xFF;
        await session.Client.SendBytesAsync((byte[])[.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body]);
        await session.Client.DiagnosticsAsync(Uri, sent => sent["diagnostics"]!.AsArray().Count == 1);
        session.Engine.Checked["a.technique.yaml"].Should().Be("\uFFFD \\ud83d 😀 \uFFFD \uFFFD BAD");
    }

    private static async Task ShouldStillServeAsync(ServerSession session)
    {
        const string other = "file:///work/still.technique.yaml";
        await session.Client.OpenAsync(other, "still BAD");
        await session.Client.DiagnosticsAsync(other, sent => sent["diagnostics"]!.AsArray().Count == 1);
        (await session.Client.HoverAsync(other, 0, 0))["result"]!.ToJsonString().Should().Contain("**still**");
    }

    private static void ShouldTellNothingOfTheInside(string answer) =>
        answer.Should().NotContainAny("secret", "Exception", "System.", "TechLint.", "   at ", "stack", "\"data\"", "hresult");
}
