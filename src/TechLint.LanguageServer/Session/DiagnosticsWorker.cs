using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Workspaces;
using TechLint.Model.Shape;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// Checks open documents and publishes what it finds, one at a time and alone: so nothing stale can follow something newer.
/// The newest edit goes first and ends a check of the same text that still runs; open documents that depend on an edited one
/// follow when nothing has changed for a while.
/// </summary>
/// <param name="surroundingsChanged">Told when files that nobody has open may have other findings; true where open documents may have, too.</param>
internal sealed class DiagnosticsWorker(
    DocumentStore store, IClient client, DiagnosticsBoard board, PositionEncoding encoding, TimeSpan quietTime, bool pushes, Action<bool> surroundingsChanged) : IDisposable
{
    private readonly Lock gate = new();
    private readonly SemaphoreSlim signal = new(0);
    private readonly Queue<DocumentUri> closed = new();
    private readonly List<string> edited = [];
    private readonly Queue<string> followers = new();
    private readonly Dictionary<(string Workspace, string Path), IWorkspace> changes = [];
    private readonly HashSet<string> changedWorkspaces = new(StringComparer.Ordinal);

    private long quietSince;
    private Job? running;

    /// <summary>A document was opened or changed: check it now, and later what depends on it.</summary>
    public void Edited(DocumentUri uri, WorkspaceChange change)
    {
        lock (gate)
        {
            edited.Remove(uri.Normal);
            edited.Add(uri.Normal);
            Remember(change);
            if (running is { } job && (job.IsFollower || string.Equals(job.Uri, uri.Normal, StringComparison.Ordinal))) job.Stop.Cancel();
        }

        signal.Release();
    }

    public void Closed(DocumentUri uri, WorkspaceChange change)
    {
        lock (gate)
        {
            edited.Remove(uri.Normal);
            closed.Enqueue(uri);
            Remember(change);
            if (running is { } job && string.Equals(job.Uri, uri.Normal, StringComparison.Ordinal)) job.Stop.Cancel();
        }

        signal.Release();
    }

    /// <summary>Something changed on which any open document of a workspace may depend.</summary>
    public void WorkspaceChanged(string workspace)
    {
        lock (gate)
        {
            changedWorkspaces.Add(workspace);
            quietSince = Environment.TickCount64;
        }

        signal.Release();
    }

    /// <summary>Everything open is to be checked now: documents have moved between workspaces, or the day has changed.</summary>
    public void AllChanged()
    {
        lock (gate)
        {
            foreach (var uri in store.OpenIn(null))
            {
                if (!edited.Contains(uri)) edited.Add(uri);
            }

            running?.Stop.Cancel();
        }

        signal.Release();
        surroundingsChanged(true);
    }

    public async Task RunAsync(CancellationToken stop)
    {
        try
        {
            while (true)
            {
                stop.ThrowIfCancellationRequested();
                if (NextClosed() is { } uri)
                {
                    if (pushes) await board.ClearAsync(uri).ConfigureAwait(false);
                    surroundingsChanged(false);
                }
                else if (NextJob(stop) is { } job)
                {
                    await RunAsync(job).ConfigureAwait(false);
                }
                else if (NextChanges() is { } batch)
                {
                    Follow(batch.Changes, batch.Workspaces);
                }
                else
                {
                    await signal.WaitAsync(UntilQuiet(), stop).ConfigureAwait(false);
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The session has ended.
        }
    }

    public void Dispose() => signal.Dispose();

    private void Remember(WorkspaceChange change)
    {
        changes.TryAdd((change.Workspace, change.Path), change.Before);
        quietSince = Environment.TickCount64;
    }

    private DocumentUri? NextClosed()
    {
        lock (gate) return closed.TryDequeue(out var uri) ? uri : null;
    }

    private Job? NextJob(CancellationToken stop)
    {
        lock (gate)
        {
            running = null;
            if (edited.Count > 0)
            {
                running = new Job(edited[^1], false, CancellationTokenSource.CreateLinkedTokenSource(stop));
                edited.RemoveAt(edited.Count - 1);
            }
            else if (followers.TryDequeue(out var uri))
            {
                running = new Job(uri, true, CancellationTokenSource.CreateLinkedTokenSource(stop));
            }

            return running;
        }
    }

    private (Dictionary<(string Workspace, string Path), IWorkspace> Changes, HashSet<string> Workspaces)? NextChanges()
    {
        lock (gate)
        {
            if ((changes.Count == 0 && changedWorkspaces.Count == 0) || UntilQuiet() > TimeSpan.Zero) return null;
            var batch = (new Dictionary<(string, string), IWorkspace>(changes), new HashSet<string>(changedWorkspaces, StringComparer.Ordinal));
            changes.Clear();
            changedWorkspaces.Clear();
            return batch;
        }
    }

    /// <summary>How long until what has changed is old enough; for ever where nothing has.</summary>
    private TimeSpan UntilQuiet()
    {
        lock (gate)
        {
            if (changes.Count == 0 && changedWorkspaces.Count == 0) return Timeout.InfiniteTimeSpan;
            var left = quietTime - TimeSpan.FromMilliseconds(Environment.TickCount64 - quietSince);
            return left > TimeSpan.Zero ? left : TimeSpan.Zero;
        }
    }

    private void Follow(Dictionary<(string Workspace, string Path), IWorkspace> batch, HashSet<string> workspaces)
    {
        var uris = new SortedSet<string>(workspaces.SelectMany(store.OpenIn), StringComparer.Ordinal);
        foreach (var ((workspace, path), before) in batch)
        {
            // A document that is alone in its workspace has nobody to tell.
            var others = store.OpenIn(workspace);
            if (others.Count == 0 || (others.Count == 1 && store.FindIn(workspace, path) is not null)) continue;
            foreach (var dependant in Dependants(before, path).Concat(Dependants(store.Workspace(workspace), path)))
            {
                if (store.FindIn(workspace, dependant) is { } document) uris.Add(document.Uri.Normal);
            }
        }

        lock (gate)
        {
            foreach (var uri in uris.Where(uri => !followers.Contains(uri))) followers.Enqueue(uri);
        }

        // A technique is nobody's surroundings.
        if (workspaces.Count > 0 || batch.Keys.Any(change => FormatKinds.Of(change.Path) != FormatKind.Technique)) surroundingsChanged(true);
    }

    private IReadOnlyList<string> Dependants(IWorkspace? workspace, string path)
    {
        try
        {
            return workspace?.DependantsOf(path) ?? [];
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Complain(path);
            return [];
        }
    }

    private async Task RunAsync(Job job)
    {
        using var stopping = job.Stop;
        try
        {
            if (store.Read(job.Uri) is not { } view) return;
            // Who asks is told with the surroundings' change that there is something to ask for.
            if (!pushes) return;

            var document = view.Document;
            var found = view.Workspace.Check(document.Home.Path, job.Stop.Token);
            job.Stop.Token.ThrowIfCancellationRequested();
            var diagnostics = DiagnosticRendering.Render(found, document, encoding, path => store.FindIn(document.Home.Key, path));
            await board.ShowOpenAsync(document, diagnostics, () => store.IsCurrent(document)).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            if (job.IsFollower) Requeue(job.Uri);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // One document that cannot be checked must not cost the others theirs.
            Complain(store.Read(job.Uri)?.Document.Home.Path ?? job.Uri);
        }
        finally
        {
            lock (gate) running = null;
        }
    }

    private void Requeue(string uri)
    {
        lock (gate)
        {
            if (!followers.Contains(uri)) followers.Enqueue(uri);
        }
    }

    private void Complain(string path) => _ = client.LogAsync(ServerLogLevel.Error, $"{path} could not be checked: an error inside techlint");

    private sealed record Job(string Uri, bool IsFollower, CancellationTokenSource Stop);
}
