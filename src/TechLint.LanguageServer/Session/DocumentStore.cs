using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Workspaces;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// The open documents and the workspaces they live in. One writer changes it, message by message; readers take a view, which
/// stays as it is. Nothing here waits: the engine's snapshots do their work when they are asked.
/// </summary>
internal sealed class DocumentStore(IWorkspaces engine, Func<DateOnly> clock, PositionEncoding encoding)
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, OpenDocument> documents = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IWorkspace> workspaces = new(StringComparer.Ordinal);
    private IReadOnlyList<string> folders = [];
    private IReadOnlyList<string> roots = [];
    private DateOnly today = clock();

    public DocumentView? Read(string uri)
    {
        lock (gate)
        {
            return documents.TryGetValue(uri, out var document) ? new DocumentView(document, workspaces[document.Home.Key]) : null;
        }
    }

    /// <summary>Whether this is still the document's newest version.</summary>
    public bool IsCurrent(OpenDocument document)
    {
        lock (gate) return documents.TryGetValue(document.Uri.Normal, out var newest) && ReferenceEquals(newest, document);
    }

    /// <summary>The open document at a path of a workspace, or null.</summary>
    public OpenDocument? FindIn(string workspace, string path)
    {
        lock (gate)
        {
            return documents.Values.FirstOrDefault(document =>
                string.Equals(document.Home.Key, workspace, StringComparison.Ordinal)
                && string.Equals(document.Home.Path, path, StringComparison.Ordinal));
        }
    }

    /// <summary>The normal addresses of a workspace's open documents; of all where null.</summary>
    public IReadOnlyList<string> OpenIn(string? workspace)
    {
        lock (gate)
        {
            return [.. documents.Where(entry => workspace is null || string.Equals(entry.Value.Home.Key, workspace, StringComparison.Ordinal))
                .Select(entry => entry.Key).Order(StringComparer.Ordinal)];
        }
    }

    public IWorkspace? Workspace(string key)
    {
        lock (gate) return workspaces.GetValueOrDefault(key);
    }

    /// <summary>The workspaces of the client's folders and of open documents, with what is open in each, all at one moment.</summary>
    public IReadOnlyList<WorkspaceView> Views()
    {
        lock (gate)
        {
            var homes = new SortedDictionary<string, WorkspaceHome>(StringComparer.Ordinal);
            foreach (var root in roots) homes[root] = new WorkspaceHome(root, root, "") { IsWorkspace = true };
            foreach (var document in documents.Values) homes.TryAdd(document.Home.Key, document.Home with { Path = "" });
            return
            [
                .. homes.Values.Select(home => new WorkspaceView(
                    home, OpenedAt(home.Key, home.Root), home.IsWorkspace,
                    documents.Values.Where(document => string.Equals(document.Home.Key, home.Key, StringComparison.Ordinal))
                        .GroupBy(document => document.Home.Path, StringComparer.Ordinal)
                        .ToDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal))),
            ];
        }
    }

    public void SetFolders(IReadOnlyList<string> clientFolders)
    {
        lock (gate)
        {
            folders = clientFolders;
            Rebuild();
        }
    }

    /// <summary>Opens or reopens a document and tells what it changed.</summary>
    public WorkspaceChange Open(DocumentUri uri, long? version, string text)
    {
        lock (gate)
        {
            if (documents.ContainsKey(uri.Normal)) Forget(uri);
            var home = WorkspaceHome.Of(uri, folders, engine);
            return Put(OpenDocument.First(uri, version, text, home));
        }
    }

    /// <summary>Applies a client's changes in their order; null where the document is not open.</summary>
    public WorkspaceChange? Edit(DocumentUri uri, long? version, IReadOnlyList<ContentChange> changes)
    {
        lock (gate)
        {
            if (!documents.TryGetValue(uri.Normal, out var document)) return null;
            var text = TextEdits.Apply(document.Source, changes, encoding).Text;
            return Put(document.Next(document.Uri, version, text, document.Home));
        }
    }

    /// <summary>Gives a document back to the disk; null where it was not open.</summary>
    public WorkspaceChange? Close(DocumentUri uri)
    {
        lock (gate) return documents.ContainsKey(uri.Normal) ? Forget(uri) : null;
    }

    /// <summary>Files changed on the disk: their workspaces read them anew. Answers the workspaces that were touched.</summary>
    public IReadOnlyList<string> Refresh(IReadOnlyList<string> files)
    {
        lock (gate)
        {
            var touched = new List<string>();
            var homes = documents.Values.Select(document => (document.Home.Key, document.Home.Root)).Concat(roots.Select(root => (root, (string?)root)));
            foreach (var (key, root) in homes.Distinct().ToList())
            {
                if (root is null || !workspaces.ContainsKey(key)) continue;
                var paths = files.Select(file => WorkspaceHome.PathWithin(root, file)).OfType<string>().ToList();
                if (paths.Count == 0) continue;
                workspaces[key] = workspaces[key].Refreshed(paths);
                touched.Add(key);
            }

            return touched;
        }
    }

    /// <summary>All files of all workspaces are read anew.</summary>
    public void RefreshAll()
    {
        lock (gate)
        {
            foreach (var (key, view) in workspaces.ToList()) workspaces[key] = view.Refreshed([]);
        }
    }

    /// <summary>A workspace's files are all read anew: for clients that do not tell of changes on the disk.</summary>
    public void RefreshAll(string workspace)
    {
        lock (gate)
        {
            if (workspaces.TryGetValue(workspace, out var view)) workspaces[workspace] = view.Refreshed([]);
        }
    }

    /// <summary>Settles anew to which workspace each document belongs: settings files came or went.</summary>
    public void SettleAnew()
    {
        lock (gate) Rebuild();
    }

    /// <summary>Opens everything anew when the day has changed; true when it has.</summary>
    public bool KeepDay()
    {
        lock (gate)
        {
            var now = clock();
            if (now == today) return false;
            today = now;
            Rebuild();
            return true;
        }
    }

    private WorkspaceChange Put(OpenDocument document)
    {
        documents[document.Uri.Normal] = document;
        var key = document.Home.Key;
        var before = OpenedAt(key, document.Home.Root);
        workspaces[key] = before.With(document.Home.Path, document.Source);
        return new WorkspaceChange(key, document.Home.Path, before);
    }

    private WorkspaceChange Forget(DocumentUri uri)
    {
        documents.Remove(uri.Normal, out var document);
        document!.Outdated.Cancel();
        var key = document.Home.Key;
        var before = workspaces[key];
        if (roots.Contains(key, StringComparer.Ordinal) || documents.Values.Any(other => string.Equals(other.Home.Key, key, StringComparison.Ordinal)))
        {
            workspaces[key] = before.With(document.Home.Path, null);
        }
        else
        {
            // Nobody looks at it any more, and nobody would tell of changes on the disk: it is opened anew when needed.
            workspaces.Remove(key);
        }

        return new WorkspaceChange(key, document.Home.Path, before);
    }

    private IWorkspace OpenedAt(string key, string? root)
    {
        if (!workspaces.TryGetValue(key, out var view)) workspaces[key] = view = engine.Open(root, today);
        return view;
    }

    private void Rebuild()
    {
        workspaces.Clear();
        roots = [.. folders.Select(folder => engine.FindRoot(folder) ?? folder).Distinct(StringComparer.Ordinal)];
        foreach (var document in documents.Values.ToList())
        {
            Put(document.Next(document.Uri, document.Version, document.Source.Text, WorkspaceHome.Of(document.Uri, folders, engine)));
        }
    }
}

/// <summary>One text of a workspace was replaced.</summary>
/// <param name="Before">The workspace without the change: what depended on the file then may not do so now.</param>
internal sealed record WorkspaceChange(string Workspace, string Path, IWorkspace Before);
