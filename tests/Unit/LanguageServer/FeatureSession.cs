using System.IO.Pipelines;
using System.Text.Json.Nodes;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>A server with the real engine over the samples.</summary>
internal sealed class FeatureSession : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly Task<int> running;

    private FeatureSession()
    {
        var (toServer, fromServer) = (new Pipe(), new Pipe());
        Client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream());
        running = Task.Run(async () =>
        {
            await using var output = fromServer.Writer.AsStream();
            return await LanguageServerHost.RunAsync(toServer.Reader.AsStream(), output, new LanguageServerOptions(() => new DateOnly(2026, 11, 24)), stop.Token);
        });
    }

    public RawLspClient Client { get; }

    public static string Samples { get; } = Path.Combine(TechLint.Tests.Tools.Repository.Root, "samples");

    public string Uri { get; } = new Uri(Path.Combine(Samples, "techniques", "gm-ut-014.technique.yaml")).AbsoluteUri;

    public string Text { get; private set; } = "";

    /// <summary>What the server announced.</summary>
    public JsonNode Capabilities { get; private set; } = new JsonObject();

    public static async Task<FeatureSession> StartAsync(string? capabilities = null, Func<string, string>? edit = null)
    {
        var session = new FeatureSession();
        var parameters = session.Client.InitializeParams(new Uri(Samples).AbsoluteUri);
        if (capabilities is not null) parameters["capabilities"] = JsonNode.Parse(capabilities);
        session.Capabilities = (await session.Client.RequestAsync("initialize", parameters))["result"]!["capabilities"]!;
        await session.Client.NotifyAsync("initialized", new JsonObject());
        var text = await File.ReadAllTextAsync(Path.Combine(Samples, "techniques", "gm-ut-014.technique.yaml"));
        session.Text = edit is null ? text : edit(text);
        await session.Client.OpenAsync(session.Uri, session.Text);
        return session;
    }

    public JsonObject At(string before, string upTo = "")
    {
        var offset = Text.IndexOf(before, StringComparison.Ordinal);
        if (offset < 0) throw new ArgumentException(before);
        return At(offset + (upTo.Length > 0 ? before.IndexOf(upTo, StringComparison.Ordinal) + upTo.Length : before.Length));
    }

    public JsonObject At(int offset)
    {
        var line = Text.AsSpan(0, offset).Count('\n');
        return RawLspClient.At(Uri, line, offset - (Text.LastIndexOf('\n', Math.Max(0, offset - 1), offset) + 1));
    }

    public async Task<JsonNode?> AskAsync(string method, JsonObject parameters)
    {
        var answer = await Client.RequestAsync(method, parameters);
        if (answer["error"] is { } error) throw new InvalidOperationException(method + ": " + error.ToJsonString());
        return answer["result"];
    }

    public JsonObject Document() => new() { ["textDocument"] = new JsonObject { ["uri"] = Uri } };

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running.WaitAsync(RawLspClient.Patience);
        await Client.DisposeAsync();
        stop.Dispose();
    }
}
