using StreamJsonRpc;
using TechLint.Model.Shape;
using TechLint.Engine.Files;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;
using TechLint.LanguageServer.Workspaces;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// The session. Notifications are served to their end, and requests take what they read, before anything is awaited: the
/// library runs handlers one after another only so far, and that is what keeps edits in the order of their arrival.
/// </summary>
internal sealed partial class ServerMethods(IWorkspaces workspaces, LanguageServerOptions options, Lifecycle lifecycle, IClient client, CancellationToken ended)
    : IServerMethods, IDisposable
{
    private static readonly Protocol.FileSystemWatcher[] WatchedFiles =
        [.. new[] { "*" + FormatKinds.TechniqueEnding, "*" + FormatKinds.EquipmentEnding, "*" + FormatKinds.RequirementsEnding, FormatKinds.SettingsName }
            .Select(name => new Protocol.FileSystemWatcher("**/" + name))];

    private readonly List<string> folders = [];
    private DocumentStore? store;
    private DiagnosticsWorker? worker;
    private DiagnosticsBoard? board;
    private WorkspaceWatch? watch;
    private ProgressDesk? desk;
    private PositionEncoding encoding;
    private ClientAbilities abilities = ClientAbilities.None;
    private volatile ClientSettings settings = new(null, null);

    /// <summary>The background work; completes after the session has ended.</summary>
    public Task Background { get; private set; } = Task.CompletedTask;

    public Task<InitializeResult> InitializeAsync(InitializeParams? parameters, CancellationToken cancellation)
    {
        if (parameters is null) throw Failure(RpcErrors.InvalidParams);

        encoding = PositionEncodings.Negotiate(parameters.Capabilities?.General?.PositionEncodings);
        abilities = ClientAbilities.Of(parameters.Capabilities);
        if (parameters.InitializationOptions is { } given) settings = given;
        AddFolders(parameters.WorkspaceFolders?.Select(folder => folder?.Uri)
            ?? [parameters.RootUri ?? (parameters.RootPath is { Length: > 0 } path ? DocumentUri.FromPath(path)?.Normal : null)]);
        store = new DocumentStore(workspaces, options.Today, encoding);
        store.SetFolders([.. folders]);
        board = new DiagnosticsBoard(client);
        desk = new ProgressDesk(client, abilities.ShowsWork);
        watch = new WorkspaceWatch(store, client, board, desk, encoding, () => settings.WorkspaceDiagnostics is not false);
        worker = new DiagnosticsWorker(store, client, board, encoding, options.QuietTime, pushes: !abilities.PullsDiagnostics, SurroundingsChanged);
        Background = Task.WhenAll(
            Task.Run(() => worker.RunAsync(ended), CancellationToken.None), Task.Run(() => watch.RunAsync(ended), CancellationToken.None));

        var version = typeof(ServerMethods).Assembly.GetName().Version?.ToString(3) ?? "";
        return Task.FromResult(new InitializeResult(
            Announced(),
            new ServerInfo("techlint", version)));
    }

    public void Initialized(InitializedParams? parameters = null)
    {
        if (abilities.AnswersConfiguration) _ = TakeSettingsAsync();
        if (abilities.WatchesFiles) Register("watched-files", "workspace/didChangeWatchedFiles", new RegistrationOptions(WatchedFiles, null));
        if (abilities.RegistersConfiguration) Register("settings", "workspace/didChangeConfiguration", new RegistrationOptions(null, "techlint"));
        if (!abilities.PullsDiagnostics) watch?.Request();

        void Register(string id, string method, RegistrationOptions given) => _ = client.RegisterAsync(new Registration(id, method, given));
    }

    public Task ShutdownAsync() => Task.CompletedTask;

    public void Exit() => lifecycle.Exit();

    public void DidOpen(DidOpenParams? parameters)
    {
        if (Ours(parameters?.TextDocument?.Uri) is not { } uri || store is null || worker is null) return;
        KeepDay();
        var change = store.Open(uri, parameters!.TextDocument!.Version, parameters.TextDocument.Text ?? "");
        if (!abilities.WatchesFiles) store.RefreshAll(change.Workspace);
        worker.Edited(uri, change);
    }

    public void DidChange(DidChangeParams? parameters)
    {
        if (Ours(parameters?.TextDocument?.Uri) is not { } uri || store is null || worker is null) return;
        KeepDay();
        var changes = (parameters!.ContentChanges ?? []).Where(change => change is not null).ToList();
        if (store.Edit(uri, parameters.TextDocument!.Version, changes) is { } change) worker.Edited(uri, change);
    }

    public void DidSave(DidSaveParams? parameters)
    {
        if (Ours(parameters?.TextDocument?.Uri) is not { } uri || store is null || worker is null) return;
        if (uri.FileName is FormatKinds.SettingsName)
        {
            SettleAnew();
        }
        else if (!abilities.WatchesFiles && store.Read(uri.Normal) is { } view)
        {
            store.RefreshAll(view.Document.Home.Key);
            worker.WorkspaceChanged(view.Document.Home.Key);
        }
    }

    public void DidClose(DidCloseParams? parameters)
    {
        if (Ours(parameters?.TextDocument?.Uri) is not { } uri || store is null || worker is null) return;
        if (store.Read(uri.Normal) is not { } view) return;
        if (store.Close(uri) is { } change) worker.Closed(view.Document.Uri, change);
    }

    public async Task<HoverResult?> HoverAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation)
    {
        if (parameters is not { TextDocument.Uri: { } address, Position: { } position }) throw Failure(RpcErrors.InvalidParams);
        if (DocumentUri.Parse(address) is not { } uri) throw Failure(RpcErrors.InvalidParams);
        if (store?.Read(uri.Normal) is not { } view) return null;

        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, view.Document.Outdated.Token);
        try
        {
            return await Task.Run(() => Hover(view, position), CancellationToken.None).WaitAsync(either.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException fault) when (!cancellation.IsCancellationRequested)
        {
            throw Failure(RpcErrors.ContentModified, fault);
        }
    }

    public void DidChangeWatchedFiles(DidChangeWatchedFilesParams? parameters)
    {
        if (store is null || worker is null) return;
        var files = (parameters?.Changes ?? []).Select(change => DocumentUri.Parse(change?.Uri)).OfType<DocumentUri>().ToList();
        if (files.Any(file => file.FileName is FormatKinds.SettingsName))
        {
            SettleAnew();
            return;
        }

        foreach (var workspace in store.Refresh([.. files.Select(file => file.Path).OfType<string>()])) worker.WorkspaceChanged(workspace);
    }

    public void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams? parameters)
    {
        if (store is null || worker is null) return;
        var removed = (parameters?.Event?.Removed ?? []).Select(folder => DocumentUri.Parse(folder?.Uri)?.Path).ToList();
        folders.RemoveAll(removed.Contains);
        AddFolders((parameters?.Event?.Added ?? []).Select(folder => folder?.Uri));
        store.SetFolders([.. folders]);
        worker.AllChanged();
    }

    public void Dispose()
    {
        worker?.Dispose();
        watch?.Dispose();
        board?.Dispose();
    }

    private static LocalRpcException Failure(int code, Exception? cause = null) => new(RpcErrors.TextOf(code), cause) { ErrorCode = code };

    private static DocumentUri? Ours(string? address) =>
        DocumentUri.Parse(address) is { } uri && FormatKinds.Of(uri.FileName) is not null ? uri : null;

    private HoverResult? Hover(DocumentView view, Position position)
    {
        var map = new PositionMap(view.Document.Source, encoding, markCounts: true);
        return view.Workspace.HoverAt(view.Document.Home.Path, map.ToOffset(position)) is { } hover
            ? new HoverResult(new MarkupContent("markdown", hover.Markdown), map.ToRange(hover.Span))
            : null;
    }

    private void AddFolders(IEnumerable<string?> addresses)
    {
        foreach (var path in addresses.Select(address => DocumentUri.Parse(address)?.Path).OfType<string>())
        {
            if (!folders.Contains(path)) folders.Add(path);
        }
    }

    private void KeepDay()
    {
        if (store!.KeepDay()) worker!.AllChanged();
    }

    private void SettleAnew()
    {
        store!.SettleAnew();
        worker!.AllChanged();
    }
}
