using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace TechLint.Tests.Shared;

/// <summary>
/// A language client that shares no code with the server: its own framing over a pair of streams. It is strict: a byte from
/// the server that is no protocol is remembered in <see cref="Fault"/> and fails every wait.
/// </summary>
internal sealed class RawLspClient : IAsyncDisposable
{
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    private readonly Stream toServer;
    private readonly Stream fromServer;
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly List<JsonObject> received = [];
    private readonly ConcurrentQueue<TaskCompletionSource> waiting = new();
    private readonly Task reading;
    private int nextId;

    public RawLspClient(Stream toServer, Stream fromServer)
    {
        this.toServer = toServer;
        this.fromServer = fromServer;
        reading = Task.Run(ReadAllAsync);
    }

    /// <summary>Whether requests of the server are answered at once, with a null result.</summary>
    public bool AnswersRequests { get; init; } = true;

    /// <summary>The result that a request of the server is answered with, where it is answered.</summary>
    public Func<JsonObject, JsonNode?> Answer { get; init; } = static _ => null;

    /// <summary>What was wrong with the server's output; null while all is well.</summary>
    public string? Fault { get; private set; }

    /// <summary>Completes when the server has closed its output.</summary>
    public Task Ended => reading;

    /// <summary>Everything received so far, in order.</summary>
    public IReadOnlyList<JsonObject> Received
    {
        get
        {
            lock (received) return [.. received];
        }
    }

    /// <summary>Forgets what has been received: a session of hours would remember it all.</summary>
    public void Forget()
    {
        lock (received) received.Clear();
    }

    public IEnumerable<JsonObject> ReceivedOf(string method) => Received.Where(message => (string?)message["method"] == method);

    public static byte[] Frame(string json, string header = "Content-Length")
    {
        var body = Encoding.UTF8.GetBytes(json);
        var head = string.Create(CultureInfo.InvariantCulture, $"{header}: {body.Length}\r\n\r\n");
        return [.. Encoding.ASCII.GetBytes(head), .. body];
    }

    public async Task SendBytesAsync(ReadOnlyMemory<byte> bytes)
    {
        await turn.WaitAsync();
        try
        {
            await toServer.WriteAsync(bytes);
            await toServer.FlushAsync();
        }
        finally
        {
            turn.Release();
        }
    }

    public Task SendJsonAsync(string json) => SendBytesAsync(Frame(json));

    public Task NotifyAsync(string method, JsonNode? parameters = null) => SendJsonAsync(Message(null, method, parameters));

    /// <summary>Sends a request and answers its id, without waiting.</summary>
    public async Task<int> BeginAsync(string method, JsonNode? parameters = null)
    {
        var id = Interlocked.Increment(ref nextId);
        await SendJsonAsync(Message(id, method, parameters));
        return id;
    }

    /// <summary>The whole response, result or error.</summary>
    public async Task<JsonObject> RequestAsync(string method, JsonNode? parameters = null) =>
        await ResponseAsync(await BeginAsync(method, parameters));

    public Task<JsonObject> ResponseAsync(int id) =>
        WaitAsync(message => message["method"] is null && message["id"]?.ToJsonString() == id.ToString(CultureInfo.InvariantCulture));

    public Task<JsonObject> NotificationAsync(string method, Func<JsonObject, bool>? that = null) =>
        WaitAsync(message => (string?)message["method"] == method && (that is null || that((JsonObject)message["params"]!)));

    /// <summary>The first message, received already or yet to come, that is the one meant.</summary>
    public async Task<JsonObject> WaitAsync(Func<JsonObject, bool> isIt)
    {
        using var patience = new CancellationTokenSource(Patience);
        while (true)
        {
            var more = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            waiting.Enqueue(more);

            // Asked before the messages are looked through: the last one may come between the two.
            var isOver = reading.IsCompleted;
            if (Received.FirstOrDefault(isIt) is { } found) return found;
            if (Fault is not null) throw new InvalidOperationException(Fault);
            if (isOver) throw new InvalidOperationException("The server closed its output before the message came: " + Transcript());
            try
            {
                await Task.WhenAny(more.Task, reading).WaitAsync(patience.Token);
            }
            catch (OperationCanceledException late)
            {
                throw new TimeoutException("The message did not come; what came: " + Transcript(), late);
            }
        }
    }

    public JsonObject InitializeParams(string? rootUri = null, params string[] encodings) => new()
    {
        ["processId"] = null,
        ["rootUri"] = rootUri,
        ["capabilities"] = new JsonObject
        {
            ["general"] = new JsonObject { ["positionEncodings"] = new JsonArray([.. encodings.Select(name => (JsonNode)name)]) },
        },
    };

    public async Task<JsonObject> InitializeAsync(string? rootUri = null, params string[] encodings)
    {
        var response = await RequestAsync("initialize", InitializeParams(rootUri, encodings));
        await NotifyAsync("initialized", new JsonObject());
        return response;
    }

    public Task OpenAsync(string uri, string text, int version = 1, string language = "yaml") => NotifyAsync("textDocument/didOpen", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = language, ["version"] = version, ["text"] = text },
    });

    public Task ChangeAsync(string uri, int version, params JsonObject[] changes) => NotifyAsync("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
        ["contentChanges"] = new JsonArray([.. changes]),
    });

    public Task CloseAsync(string uri) =>
        NotifyAsync("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri } });

    public Task<JsonObject> HoverAsync(string uri, int line, int character) => RequestAsync("textDocument/hover", At(uri, line, character));

    public static JsonObject At(string uri, int line, int character) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri },
        ["position"] = Position(line, character),
    };

    public static JsonObject Position(int line, int character) => new() { ["line"] = line, ["character"] = character };

    public static JsonObject Change(int fromLine, int fromCharacter, int toLine, int toCharacter, string text) => new()
    {
        ["range"] = new JsonObject { ["start"] = Position(fromLine, fromCharacter), ["end"] = Position(toLine, toCharacter) },
        ["text"] = text,
    };

    public static JsonObject WholeText(string text) => new() { ["text"] = text };

    public Task<JsonObject> DiagnosticsAsync(string uri, Func<JsonObject, bool>? that = null) =>
        NotificationAsync("textDocument/publishDiagnostics", sent => (string?)sent["uri"] == uri && (that is null || that(sent)));

    /// <summary>Ends the session as the protocol has it.</summary>
    public async Task EndAsync()
    {
        await RequestAsync("shutdown");
        await NotifyAsync("exit");
    }

    public async ValueTask DisposeAsync()
    {
        await toServer.DisposeAsync();
        await fromServer.DisposeAsync();
        turn.Dispose();
    }

    private static string Message(int? id, string method, JsonNode? parameters)
    {
        var message = new JsonObject { ["jsonrpc"] = "2.0" };
        if (id is not null) message["id"] = id;
        message["method"] = method;
        if (parameters is not null) message["params"] = parameters;
        return message.ToJsonString();
    }

    private string Transcript() => string.Join('\n', Received.TakeLast(20).Select(message => message.ToJsonString()));

    private async Task ReadAllAsync()
    {
        try
        {
            while (await ReadMessageAsync() is { } message)
            {
                lock (received) received.Add(message);
                while (waiting.TryDequeue(out var waiter)) waiter.TrySetResult();
                if (AnswersRequests && message["method"] is not null && message["id"] is { } id)
                {
                    await SendJsonAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id.DeepClone(), ["result"] = Answer(message) }.ToJsonString());
                }
            }
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException or OperationCanceledException)
        {
            // The pipe is gone: an end like any other.
        }
        catch (Exception fault) when (fault is System.Text.Json.JsonException or FormatException or InvalidCastException)
        {
            Fault = "The server wrote something that is not protocol: " + fault.Message;
        }
        finally
        {
            while (waiting.TryDequeue(out var waiter)) waiter.TrySetResult();
        }
    }

    private async Task<JsonObject?> ReadMessageAsync()
    {
        var head = new StringBuilder();
        var one = new byte[1];
        while (!head.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            if (await fromServer.ReadAsync(one) == 0)
            {
                return head.Length == 0 ? null : throw new FormatException("a header that breaks off: " + head);
            }

            head.Append((char)one[0]);
            if (head.Length > 200) throw new FormatException("no header: " + head);
        }

        const string name = "Content-Length: ";
        var line = head.ToString()[..^4];
        if (!line.StartsWith(name, StringComparison.Ordinal)) throw new FormatException("an unknown header: " + line);
        var body = new byte[int.Parse(line.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture)];
        await fromServer.ReadExactlyAsync(body);
        return (JsonObject)JsonNode.Parse(body)!;
    }
}
