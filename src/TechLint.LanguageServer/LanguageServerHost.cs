using System.Text.Json;
using StreamJsonRpc;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Session;
using TechLint.LanguageServer.Transport;
using TechLint.LanguageServer.Workspaces;

namespace TechLint.LanguageServer;

/// <summary>Serves one client over a pair of streams.</summary>
public static class LanguageServerHost
{
    /// <summary>How long answers that are still owed are waited for when the client says <c>exit</c>.</summary>
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(1);

    /// <summary>
    /// Runs until the client says <c>exit</c>, its stream ends or the caller cancels. Answers the process's exit code: 0 after
    /// <c>shutdown</c> and <c>exit</c>, else 1. Nothing but protocol goes to <paramref name="output"/>.
    /// </summary>
    public static Task<int> RunAsync(Stream input, Stream output, LanguageServerOptions options, CancellationToken cancellation) =>
        RunAsync(input, output, options, new EngineWorkspaces(), cancellation);

    internal static async Task<int> RunAsync(
        Stream input, Stream output, LanguageServerOptions options, IWorkspaces workspaces, CancellationToken cancellation)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var lifecycle = new Lifecycle();

        // Marked experimental by the library, and the only one of its JSON formatters that works without dynamic code; pinned by version.
#pragma warning disable PolyTypeJson
        var formatter = new PolyTypeJsonFormatter
        {
            JsonSerializerOptions = new JsonSerializerOptions(ProtocolJson.Default.Options),
            TypeShapeProvider = PolyType.SourceGenerator.TypeShapeProvider_TechLint_LanguageServer.Default,
        };
#pragma warning restore PolyTypeJson

        using var door = new DoorHandler(input, output, formatter, lifecycle, options.MessageSizeLimit);
        using var connection = new LspConnection(door, options.LogLevel);
        using var methods = new ServerMethods(workspaces, options, lifecycle, connection, ended.Token);
        connection.AddLocalRpcTarget(RpcTargetMetadata.FromShape<IServerMethods>(), methods, null);
        connection.StartListening();

        var over = Task.Delay(Timeout.Infinite, ended.Token);
        var first = await Task.WhenAny(lifecycle.Exited, connection.Completion, over).ConfigureAwait(false);
        var isProper = first == lifecycle.Exited && lifecycle.Stage == LifecycleStage.ShutDown;
        if (isProper) await door.QuietAsync(Farewell).ConfigureAwait(false);
        await ended.CancelAsync().ConfigureAwait(false);
        await methods.Background.WaitAsync(Farewell, CancellationToken.None).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return isProper ? 0 : 1;
    }
}
