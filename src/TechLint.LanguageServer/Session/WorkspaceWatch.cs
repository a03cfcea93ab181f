using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;
using TechLint.Model.Shape;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// Keeps the findings of files that nobody has open in front of a client that does not ask for them: the workspaces are gone through at the
/// start and whenever something changes on which a file may depend. A newer reason ends the round that runs; the client may end it too, and
/// then it rests until there is a new reason.
/// </summary>
/// <param name="wantsAll">Whether the client wants all files looked at; else only the settings are, since they bear on every verdict.</param>
internal sealed class WorkspaceWatch(
    DocumentStore store, IClient client, DiagnosticsBoard board, ProgressDesk desk, PositionEncoding encoding, Func<bool> wantsAll) : IDisposable
{
    /// <summary>From how many files on the work is worth a progress: fewer are done before an eye could read of it (common practice).</summary>
    public const int WorthTelling = 16;

    private const string Title = "Checking the workspace";

    private readonly Lock gate = new();
    private readonly SemaphoreSlim signal = new(0);
    private CancellationTokenSource? running;

    /// <summary>There is a reason to look again.</summary>
    public void Request()
    {
        lock (gate) running?.Cancel();
        signal.Release();
    }

    public async Task RunAsync(CancellationToken stop)
    {
        try
        {
            while (true)
            {
                await signal.WaitAsync(stop).ConfigureAwait(false);

                // Many reasons make one round.
                while (signal.Wait(0, CancellationToken.None))
                {
                }

                using var round = CancellationTokenSource.CreateLinkedTokenSource(stop);
                lock (gate) running = round;
                try
                {
                    await GoThroughAsync(round).ConfigureAwait(false);
                }
                catch (OperationCanceledException) when (!stop.IsCancellationRequested)
                {
                    // A newer reason has set the signal; where the client ended it, nothing is owed.
                }
                catch (Exception fault) when (fault is not (OutOfMemoryException or OperationCanceledException))
                {
                    _ = client.LogAsync(ServerLogLevel.Error, "The workspace could not be checked: an error inside techlint");
                }
                finally
                {
                    lock (gate) running = null;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The session has ended.
        }
    }

    public void Dispose() => signal.Dispose();

    private async Task GoThroughAsync(CancellationTokenSource round)
    {
        var token = round.Token;
        var everything = wantsAll();
        var files = await Task.Run(
            () => WorkspaceFiles.Of(store.Views())
                .Where(file => everything || Path.GetFileName(file.Path) is FormatKinds.SettingsName).ToList(),
            token).ConfigureAwait(false);
        var closed = files.Where(file => file.Open is null).ToList();
        var todo = closed.Count(file => !file.View.Workspace.IsKnown(file.Path));
        var progress = todo >= WorthTelling ? desk.OfServer(Title, closed.Count, round) : null;
        var isDone = false;
        try
        {
            await board.KeepOnlyAsync([.. files.Select(file => file.Uri.Normal)], IsClosed).ConfigureAwait(false);
            for (var at = 0; at < closed.Count; at++)
            {
                token.ThrowIfCancellationRequested();
                await ShowAsync(closed[at], token).ConfigureAwait(false);
                progress?.Report(at + 1);
            }

            isDone = true;
        }
        finally
        {
            if (progress is not null) await progress.EndAsync(isDone ? "done" : "ended early").ConfigureAwait(false);
        }
    }

    private async Task ShowAsync(WorkspaceFile file, CancellationToken token)
    {
        if (!IsClosed(file.Uri.Normal)) return;
        Diagnostic[] diagnostics;
        try
        {
            diagnostics = await Task.Run(() => WorkspaceReport.Diagnostics(file, encoding, token), token).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is not (OutOfMemoryException or OperationCanceledException))
        {
            // One file that cannot be checked must not cost the others theirs.
            _ = client.LogAsync(ServerLogLevel.Error, $"{file.Path} could not be checked: an error inside techlint");
            return;
        }

        await board.ShowClosedAsync(file.Uri, diagnostics, () => IsClosed(file.Uri.Normal) && !token.IsCancellationRequested).ConfigureAwait(false);
    }

    private bool IsClosed(string normal) => store.Read(normal) is null;
}
