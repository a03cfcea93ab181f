using System.Collections.Concurrent;
using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;

namespace TechLint.LanguageServer.Session;

/// <summary>The connection to the client: what the server says of its own accord, and which code an error bears.</summary>
internal sealed class LspConnection(IJsonRpcMessageHandler door, ServerLogLevel logLevel) : JsonRpc(door), IClient
{
    private static readonly Dictionary<string, Type> ClearTypes = new(StringComparer.Ordinal)
    {
        ["uri"] = typeof(string), ["diagnostics"] = typeof(Diagnostic[]),
    };

    private static readonly Dictionary<string, Type> PublishTypes = new(ClearTypes, StringComparer.Ordinal) { ["version"] = typeof(long) };

    private static readonly Dictionary<string, Type> LogTypes = new(StringComparer.Ordinal) { ["type"] = typeof(int), ["message"] = typeof(string) };

    private static readonly Dictionary<string, Type> RegisterTypes = new(StringComparer.Ordinal) { ["registrations"] = typeof(Registration[]) };

    private static readonly Dictionary<string, Type> CreateTypes = new(StringComparer.Ordinal) { ["token"] = typeof(ProgressToken) };

    private static readonly Dictionary<string, Type> ConfigurationTypes = new(StringComparer.Ordinal) { ["items"] = typeof(ConfigurationItem[]) };

    /// <summary>How many requests of one kind may be without an answer; far more than an editor's event loop leaves (our own choice).</summary>
    private const int MostUnanswered = 32;

    private readonly ConcurrentDictionary<string, int> refreshes = new(StringComparer.Ordinal);

    public Task PublishAsync(string uri, long? version, Diagnostic[] diagnostics)
    {
        var parameters = new Dictionary<string, object?>(StringComparer.Ordinal) { ["uri"] = uri };
        if (version is { } known) parameters["version"] = known;
        parameters["diagnostics"] = diagnostics;
        return SendAsync("textDocument/publishDiagnostics", parameters, version is null ? ClearTypes : PublishTypes);
    }

    public Task LogAsync(ServerLogLevel level, string message)
    {
        if (level > logLevel) return Task.CompletedTask;
        var type = level == ServerLogLevel.Error ? 1 : 3;
        return SendAsync("window/logMessage", new(StringComparer.Ordinal) { ["type"] = type, ["message"] = message }, LogTypes);
    }

    public Task ShowAsync(string message) =>
        SendAsync("window/showMessage", new(StringComparer.Ordinal) { ["type"] = 3, ["message"] = message }, LogTypes);

    public async Task RegisterAsync(Registration registration)
    {
        try
        {
            await InvokeWithParameterObjectAsync<object?>(
                "client/registerCapability",
                new Dictionary<string, object?>(StringComparer.Ordinal) { ["registrations"] = new[] { registration } },
                RegisterTypes,
                CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is RemoteRpcException or ConnectionLostException or ObjectDisposedException or OperationCanceledException)
        {
            // A client that refuses goes without.
        }
    }

    public async Task<ClientSettings?> AskSettingsAsync()
    {
        try
        {
            var answer = await InvokeWithParameterObjectAsync<ClientSettings[]?>(
                "workspace/configuration",
                new Dictionary<string, object?>(StringComparer.Ordinal) { ["items"] = new[] { new ConfigurationItem("techlint") } },
                ConfigurationTypes,
                CancellationToken.None).ConfigureAwait(false);
            return answer is { Length: > 0 } ? answer[0] : null;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // Whatever a client says to it, it is served as if it had said nothing.
            return null;
        }
    }

    public Task ProgressAsync<T>(ProgressToken token, T value) where T : class => SendAsync(
        "$/progress",
        new(StringComparer.Ordinal) { ["token"] = token, ["value"] = value },
        new(StringComparer.Ordinal) { ["token"] = typeof(ProgressToken), ["value"] = typeof(T) });

    public async Task<bool> CreateProgressAsync(ProgressToken token)
    {
        try
        {
            await InvokeWithParameterObjectAsync<object?>(
                "window/workDoneProgress/create", new Dictionary<string, object?>(StringComparer.Ordinal) { ["token"] = token }, CreateTypes, CancellationToken.None)
                .ConfigureAwait(false);
            return true;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // A client that refuses goes without.
            return false;
        }
    }

    public async Task RefreshAsync(string method)
    {
        // A client that leaves this many without an answer leaves them all: it is not to cost memory without end.
        if (refreshes.AddOrUpdate(method, 1, static (_, count) => count + 1) > MostUnanswered) return;
        try
        {
            await InvokeWithParameterObjectAsync<object?>(method, argument: null, CancellationToken.None).ConfigureAwait(false);
            refreshes[method] = 0;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // A client that refuses goes without.
        }
    }

    /// <summary>The code alone: the door gives each code its text, but for a refusal, whose reason is for the user.</summary>
    protected override JsonRpcError.ErrorDetail CreateErrorDetails(JsonRpcRequest request, Exception exception) => new()
    {
        Code = (JsonRpcErrorCode)(exception switch
        {
            LocalRpcException known => known.ErrorCode,
            OperationCanceledException => RpcErrors.RequestCancelled,
            RpcArgumentDeserializationException or JsonException => RpcErrors.InvalidParams,
            _ => RpcErrors.InternalError,
        }),
        Message = exception is LocalRpcException { ErrorCode: RpcErrors.RequestFailed } refusal ? refusal.Message : null!,
    };

    private async Task SendAsync(string method, Dictionary<string, object?> parameters, Dictionary<string, Type> types)
    {
        try
        {
            await NotifyWithParameterObjectAsync(method, parameters, types).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // Mostly nobody listens any more, and the end of the client's stream ends the session. Whatever it is, one message that
            // cannot be sent must not end the work on the next.
        }
    }
}
