using System.Buffers;
using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace TechLint.LanguageServer.Transport;

/// <summary>
/// The door of the server: cuts the stream into messages, keeps the protocol's life cycle in the order of arrival and answers
/// itself whatever cannot be let in. What passes is a well-formed message that the session may see.
/// </summary>
internal sealed class DoorHandler : IJsonRpcMessageHandler, IDisposable
{
    private readonly FrameReader reader;
    private readonly FrameWriter writer;
    private readonly Lifecycle lifecycle;
    private readonly long sizeLimit;
    private readonly ConcurrentDictionary<RequestId, bool> unanswered = new();
    private readonly ConcurrentDictionary<RequestId, bool> expected = new();
    private int owed;
    private RequestId initialize = RequestId.Null;

    public DoorHandler(Stream input, Stream output, IJsonRpcMessageFormatter formatter, Lifecycle lifecycle, long sizeLimit)
    {
        Formatter = formatter;
        this.lifecycle = lifecycle;
        this.sizeLimit = sizeLimit;
        reader = new FrameReader(input, sizeLimit);
        writer = new FrameWriter(output);
    }

    public bool CanRead => true;

    public bool CanWrite => true;

    public IJsonRpcMessageFormatter Formatter { get; }

    /// <summary>Waits until every request that was let in has its answer on the stream, at most for the time given.</summary>
    public async Task QuietAsync(TimeSpan atMost)
    {
        var until = Environment.TickCount64 + (long)atMost.TotalMilliseconds;
        while (Volatile.Read(ref owed) > 0 && Environment.TickCount64 < until) await Task.Delay(2).ConfigureAwait(false);
    }

    /// <summary>The next message that may be let in; null when the stream has ended or broken.</summary>
    public async ValueTask<JsonRpcMessage?> ReadAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            Frame frame;
            try
            {
                frame = await reader.ReadAsync(cancellationToken).ConfigureAwait(false);
            }
            catch (Exception fault) when (fault is IOException or ObjectDisposedException)
            {
                return null;
            }

            switch (frame.Kind)
            {
                case FrameKind.End:
                    return null;
                case FrameKind.BadHeader:
                    await RefuseAsync(RequestId.Null, RpcErrors.ParseError, "The header holds no usable Content-Length").ConfigureAwait(false);
                    continue;
                case FrameKind.TooLarge:
                    await RefuseAsync(
                        RequestId.Null,
                        RpcErrors.InvalidRequest,
                        string.Create(CultureInfo.InvariantCulture, $"The message is larger than {sizeLimit} bytes")).ConfigureAwait(false);
                    await reader.SkipAsync(frame.Length, cancellationToken).ConfigureAwait(false);
                    continue;
                default:
                    if (await AdmitAsync(PayloadText.Mended(frame.Payload)).ConfigureAwait(false) is { } message) return message;
                    continue;
            }
        }
    }

    public async ValueTask WriteAsync(JsonRpcMessage message, CancellationToken cancellationToken)
    {
        if (message is JsonRpcError { Error: { } error })
        {
            if ((int)error.Code != RpcErrors.RequestFailed || error.Message is null) error.Message = RpcErrors.TextOf((int)error.Code);
            error.Data = null;
        }

        if (message is JsonRpcRequest { IsResponseExpected: true } asked) expected[asked.RequestId] = true;
        var buffer = new ArrayBufferWriter<byte>(512);
        Formatter.Serialize(buffer, message);

        // The client may use the id again as soon as it has read the answer; the answer is owed until it is written.
        var answers = message is JsonRpcResult or JsonRpcError && unanswered.TryRemove(((IJsonRpcMessageWithId)message).RequestId, out _);
        if (message is JsonRpcError failed && failed.RequestId == initialize) lifecycle.InitializeFailed();
        try
        {
            await writer.WriteAsync(buffer.WrittenMemory, cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            if (answers) Interlocked.Decrement(ref owed);
        }
    }

    public void Dispose() => writer.Dispose();

    private async ValueTask<JsonRpcMessage?> AdmitAsync(byte[] payload)
    {
        var envelope = Envelope.Read(payload);
        if (Refusal(envelope) is { } refusal)
        {
            if (refusal.Code != 0) await RefuseAsync(envelope.Id, refusal.Code, refusal.Message).ConfigureAwait(false);
            return null;
        }

        JsonRpcMessage message;
        try
        {
            message = Formatter.Deserialize(new ReadOnlySequence<byte>(Bare(envelope) ?? payload));
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException or NotSupportedException)
        {
            // An answer that cannot be read is no answer; only a request is owed one.
            if (envelope.Kind == EnvelopeKind.Request)
            {
                await RefuseAsync(envelope.Id, RpcErrors.InvalidRequest, "The request cannot be read").ConfigureAwait(false);
            }

            return null;
        }

        Enter(envelope);
        return message;
    }

    /// <summary>
    /// The two messages without parameters, whatever a client sends along: the library would look for a method that takes it.
    /// </summary>
    private static byte[]? Bare(Envelope envelope) => envelope switch
    {
        { Params: JsonTokenType.None } => null,
        { Kind: EnvelopeKind.Request, Method: "shutdown" } => RpcErrors.Call(envelope.Id, "shutdown"),
        { Kind: EnvelopeKind.Notification, Method: "exit" } => RpcErrors.Call(null, "exit"),
        _ => null,
    };

    /// <summary>Why a message stays outside; a code of 0 means silently. Null lets it in.</summary>
    private (int Code, string Message)? Refusal(Envelope envelope)
    {
        switch (envelope.Kind)
        {
            case EnvelopeKind.NotJson:
                return (RpcErrors.ParseError, "The message is not valid JSON");
            case EnvelopeKind.Invalid:
                return (RpcErrors.InvalidRequest, "The message is not a JSON-RPC 2.0 message");
            case EnvelopeKind.Response:
                // The library takes an answer to nothing for the end of the connection.
                return expected.TryRemove(envelope.Id, out _) ? null : (0, "");
            case EnvelopeKind.Notification when envelope.Method is "exit":
                return null;
            case EnvelopeKind.Notification:
                var passes = lifecycle.Stage == LifecycleStage.Running
                    && envelope.Params is JsonTokenType.StartObject or JsonTokenType.None or JsonTokenType.Null
                    && (!envelope.Method.StartsWith("$/", StringComparison.Ordinal)
                        || (envelope.Method is "$/cancelRequest" && envelope.TargetIdIsValid));
                return passes ? null : (0, "");
        }

        return lifecycle.Stage switch
        {
            LifecycleStage.ShutDown => (RpcErrors.InvalidRequest, "The server has been shut down"),
            LifecycleStage.Uninitialized when envelope.Method is not "initialize" =>
                (RpcErrors.ServerNotInitialized, "The server has not been initialized"),
            LifecycleStage.Running when envelope.Method is "initialize" => (RpcErrors.InvalidRequest, "The server is already initialized"),
            _ when envelope.Method is "$/cancelRequest" => (RpcErrors.MethodNotFound, RpcErrors.TextOf(RpcErrors.MethodNotFound)),
            _ when unanswered.ContainsKey(envelope.Id) => (RpcErrors.InvalidRequest, "A request with this id is still being answered"),

            // Every request of LSP takes an object; the one without parameters takes whatever clients send along.
            _ when envelope.Method is not "shutdown" && envelope.Params is not (JsonTokenType.StartObject or JsonTokenType.None or JsonTokenType.Null) =>
                (RpcErrors.InvalidParams, RpcErrors.TextOf(RpcErrors.InvalidParams)),
            _ => null,
        };
    }

    private void Enter(Envelope envelope)
    {
        if (envelope.Kind != EnvelopeKind.Request) return;
        unanswered[envelope.Id] = true;
        Interlocked.Increment(ref owed);
        if (envelope.Method is "initialize")
        {
            initialize = envelope.Id;
            lifecycle.Initialize();
        }

        if (envelope.Method is "shutdown") lifecycle.ShutDown();
    }

    /// <summary>Answers in the session's place.</summary>
    private async ValueTask RefuseAsync(RequestId id, int code, string message)
    {
        try
        {
            await writer.WriteAsync(RpcErrors.Response(id, code, message), CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException)
        {
            // A client that no longer listens is found out by the end of its own stream.
        }
    }
}
