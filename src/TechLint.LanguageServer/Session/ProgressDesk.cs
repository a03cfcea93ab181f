using System.Collections.Concurrent;
using System.Globalization;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>The work that tells of its progress, so that the client can stop it by the token.</summary>
internal sealed class ProgressDesk(IClient client, bool clientShowsWork)
{
    private readonly ConcurrentDictionary<ProgressToken, CancellationTokenSource> running = new();
    private int number;

    public void Cancel(ProgressToken token)
    {
        if (!running.TryGetValue(token, out var stop)) return;
        try
        {
            stop.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It has just ended.
        }
    }

    /// <summary>Work that the client asked for, under the token it gave; without one nothing is told.</summary>
    public Entry OfRequest(ProgressToken? token, string title, int total, CancellationTokenSource stop)
    {
        if (token is null || !running.TryAdd(token, stop)) return new Entry(this, null, null);
        var progress = new WorkProgress(client, token, total);
        progress.Begin(title);
        return new Entry(this, token, progress);
    }

    /// <summary>Work of the server's own accord: told once the client has agreed to the token, and not at all where it never does.</summary>
    public Entry OfServer(string title, int total, CancellationTokenSource stop)
    {
        if (!clientShowsWork) return new Entry(this, null, null);
        var token = new ProgressToken(string.Create(CultureInfo.InvariantCulture, $"techlint-{Interlocked.Increment(ref number)}"), null);
        running[token] = stop;
        var progress = new WorkProgress(client, token, total);
        _ = BeginWhenAgreedAsync();
        return new Entry(this, token, progress);

        async Task BeginWhenAgreedAsync()
        {
            if (await client.CreateProgressAsync(token).ConfigureAwait(false)) progress.Begin(title);
        }
    }

    /// <summary>One piece of work; the caller ends it whatever happens.</summary>
    internal sealed class Entry(ProgressDesk desk, ProgressToken? token, WorkProgress? progress)
    {
        public void Report(int done) => progress?.Report(done);

        public Task EndAsync(string message)
        {
            if (token is not null) desk.running.TryRemove(token, out _);
            return progress?.EndAsync(message) ?? Task.CompletedTask;
        }
    }
}
