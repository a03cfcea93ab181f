using System.IO.Pipelines;
using FluentAssertions;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>A server in this process, a fake engine behind it and a raw client before it.</summary>
internal sealed class ServerSession : IAsyncDisposable
{
    public static readonly DateOnly Day = new(2026, 11, 24);

    private readonly CancellationTokenSource stop = new();

    public ServerSession(FakeWorkspaces? engine = null, long sizeLimit = 1024 * 1024, bool answersRequests = true)
    {
        Engine = engine ?? new FakeWorkspaces();
        var toServer = new Pipe();
        var fromServer = new Pipe();
        var options = new LanguageServerOptions(() => Today) { MessageSizeLimit = sizeLimit, QuietTime = TimeSpan.FromMilliseconds(30) };
        Client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream()) { AnswersRequests = answersRequests };
        ExitCode = Task.Run(async () =>
        {
            await using var output = fromServer.Writer.AsStream();
            return await LanguageServerHost.RunAsync(toServer.Reader.AsStream(), output, options, Engine, stop.Token);
        });
    }

    public FakeWorkspaces Engine { get; }

    public RawLspClient Client { get; }

    public Task<int> ExitCode { get; }

    public DateOnly Today { get; set; } = Day;

    public static async Task<ServerSession> StartAsync(FakeWorkspaces? engine = null, params string[] encodings)
    {
        var session = new ServerSession(engine);
        await session.Client.InitializeAsync("file:///work", encodings);
        return session;
    }

    public Task<int> ExitAsync() => ExitCode.WaitAsync(RawLspClient.Patience);

    public void Cancel() => stop.Cancel();

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await ExitCode.WaitAsync(RawLspClient.Patience);
        Client.Fault.Should().BeNull();
        await Client.DisposeAsync();
        stop.Dispose();
    }
}
