using System.Diagnostics;
using System.IO.Pipelines;
using System.Text.Json.Nodes;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Tools.Editing;

/// <summary>A server over the samples with a raw client before it: in this process, or an executable over its pipes.</summary>
internal sealed class EditorSession : IAsyncDisposable
{
    private const string Capabilities = """
        {"textDocument":{"diagnostic":{},"completion":{"completionItem":{"snippetSupport":true} } },
         "workspace":{"diagnostics":{"refreshSupport":true},"inlayHint":{"refreshSupport":true},"codeLens":{"refreshSupport":true} } }
        """;

    private readonly CancellationTokenSource stop = new();
    private readonly Task running = Task.CompletedTask;
    private readonly Process? server;

    private EditorSession(string? executable)
    {
        if (executable is null)
        {
            var (toServer, fromServer) = (new Pipe(), new Pipe());
            Client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream());
            running = Task.Run(async () =>
            {
                await using var output = fromServer.Writer.AsStream();
                await LanguageServerHost.RunAsync(toServer.Reader.AsStream(), output, new LanguageServerOptions(() => new DateOnly(2026, 11, 24)), stop.Token);
            });
            return;
        }

        server = Process.Start(new ProcessStartInfo(executable, "lsp") { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true })!;
        Client = new RawLspClient(server.StandardInput.BaseStream, server.StandardOutput.BaseStream);
    }

    public static string Samples { get; } = Path.Combine(Repository.Root, "samples");

    public RawLspClient Client { get; }

    public JsonNode Announced { get; private set; } = new JsonObject();

    /// <param name="executable">Null for a server in this process.</param>
    public static async Task<EditorSession> StartAsync(string? executable)
    {
        var session = new EditorSession(executable);
        var parameters = session.Client.InitializeParams(new Uri(Samples).AbsoluteUri);
        parameters["capabilities"] = JsonNode.Parse(Capabilities);
        session.Announced = (await session.Client.RequestAsync("initialize", parameters))["result"]!["capabilities"]!;
        await session.Client.NotifyAsync("initialized", new JsonObject());
        return session;
    }

    public static string UriOf(string file) => new Uri(file).AbsoluteUri;

    /// <summary>Bytes: the managed heap after a full collection, or what the executable holds of the machine's memory.</summary>
    public long Memory()
    {
        if (server is null)
        {
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            GC.WaitForPendingFinalizers();
            return GC.GetTotalMemory(forceFullCollection: true);
        }

        server.Refresh();
        return server.WorkingSet64;
    }

    public async ValueTask DisposeAsync()
    {
        await Client.EndAsync();
        await stop.CancelAsync();
        await running.WaitAsync(RawLspClient.Patience);
        if (server is not null) await server.WaitForExitAsync();
        await Client.DisposeAsync();
        server?.Dispose();
        stop.Dispose();
    }
}
