using TechLint.Engine.Navigating;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;
using TechLint.LanguageServer.Workspaces;

namespace TechLint.LanguageServer.Session;

// Requests: each takes the document and its workspace as they stand, then works apart from the session's order.
internal sealed partial class ServerMethods
{
    public Task<CompletionList?> CompletionAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Completion.Of(context, parameters!.Position!), cancellation);

    public Task<SignatureHelp?> SignatureHelpAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Outlines.Signature(context, parameters!.Position!), cancellation);

    public Task<CodeAction[]?> CodeActionAsync(CodeActionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Range is { Start: not null, End: not null }, context => CodeActions.Of(context, parameters!), cancellation);

    public Task<Location[]?> DefinitionAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Navigation.Definition(context, parameters!.Position!), cancellation);

    public Task<Location[]?> ReferencesAsync(ReferenceParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Navigation.References(context, parameters!.Position!, parameters.Context?.IncludeDeclaration is not false), cancellation);

    public Task<DocumentHighlight[]?> DocumentHighlightAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Navigation.Highlights(context, parameters!.Position!), cancellation);

    public Task<PrepareRenameResult?> PrepareRenameAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null, context => Navigation.PrepareRename(context, parameters!.Position!), cancellation);

    public Task<WorkspaceEdit?> RenameAsync(RenameParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Position is not null && parameters.NewName is not null, context => Navigation.Rename(context, parameters!.Position!, parameters.NewName!) ?? throw Failure(RpcErrors.InvalidParams), cancellation);

    public Task<DocumentSymbol[]?> DocumentSymbolAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => Outlines.Symbols(context), cancellation);

    public Task<FoldingRange[]?> FoldingRangeAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => Outlines.Folds(context), cancellation);

    public Task<SelectionRange[]?> SelectionRangeAsync(SelectionRangeParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Positions is not null && parameters.Positions.All(position => position is not null), context => Outlines.Selections(context, parameters!.Positions!), cancellation);

    public Task<SemanticTokens?> SemanticTokensFullAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => Outlines.Tokens(context, context.Span(null)), cancellation);

    public Task<SemanticTokens?> SemanticTokensRangeAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Range is not null, context => Outlines.Tokens(context, context.Span(parameters!.Range)), cancellation);

    public Task<DocumentLink[]?> DocumentLinkAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => Outlines.Links(context), cancellation);

    public Task<InlayHint[]?> InlayHintAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Range is not null, context => ComputedHints.Hints(context, parameters!.Range), cancellation);

    public Task<CodeLens[]?> CodeLensAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => ComputedHints.Lenses(context), cancellation);

    public Task<DocumentDiagnosticReport?> DocumentDiagnosticAsync(DocumentDiagnosticParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => PulledDiagnostics.Of(context, parameters!.PreviousResultId), cancellation);

    /// <summary>Definitions of every file of the workspaces, whose names hold the query.</summary>
    public Task<SymbolInformation[]?> WorkspaceSymbolAsync(WorkspaceSymbolParams? parameters, CancellationToken cancellation)
    {
        var homes = AllWorkspaces();
        return Task.Run<SymbolInformation[]?>(() => WorkspaceSymbols(homes, parameters?.Query ?? "", cancellation), cancellation);
    }

    public Task<WorkspaceDiagnosticReport> WorkspaceDiagnosticAsync(WorkspaceDiagnosticParams? parameters, CancellationToken cancellation)
    {
        var homes = AllWorkspaces();
        var before = (parameters?.PreviousResultIds ?? []).Where(known => DocumentUri.Parse(known?.Uri) is not null)
            .GroupBy(known => DocumentUri.Parse(known.Uri)!.Normal, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Last().Value, StringComparer.Ordinal);
        return Task.Run(() => WorkspaceDiagnostics(homes, before, cancellation), cancellation);
    }

    public void DidChangeConfiguration(DidChangeConfigurationParams? parameters)
    {
        if (abilities.AnswersConfiguration) _ = TakeSettingsAsync();
        else if (parameters?.Settings?.Techlint is { } given) Take(given);
    }

    private async Task TakeSettingsAsync()
    {
        if (await client.AskSettingsAsync().ConfigureAwait(false) is { } given) Take(given);
    }

    private void Take(ClientSettings given)
    {
        if (given == settings) return;
        settings = given;
        if (abilities.RefreshesHints) _ = client.RefreshAsync("workspace/inlayHint/refresh");
        if (abilities.RefreshesLenses) _ = client.RefreshAsync("workspace/codeLens/refresh");
    }

    private ServerCapabilities Announced() => new(
        encoding.Name(),
        new TextDocumentSyncOptions(OpenClose: true, Change: 2, new SaveOptions(IncludeText: false)),
        HoverProvider: true,
        new CompletionOptions([":", " ", "{", "[", ",", "-", "/"]),
        new SignatureHelpOptions(["{", ","]),
        DefinitionProvider: true,
        ReferencesProvider: true,
        DocumentHighlightProvider: true,
        DocumentSymbolProvider: true,
        WorkspaceSymbolProvider: true,
        new CodeActionOptions([CodeActions.QuickFix, CodeActions.Rewrite, CodeActions.FixAll]),
        new CodeLensOptions(ResolveProvider: false),
        new DocumentLinkOptions(ResolveProvider: false),
        new RenameOptions(PrepareProvider: true),
        FoldingRangeProvider: true,
        SelectionRangeProvider: true,
        new SemanticTokensOptions(Outlines.Legend, Range: true, Full: true),
        InlayHintProvider: true,
        abilities.PullsDiagnostics ? new DiagnosticOptions("techlint", InterFileDependencies: true, WorkspaceDiagnostics: true) : null,
        new WorkspaceServerCapabilities(new WorkspaceFoldersServerCapabilities(Supported: true, ChangeNotifications: true)));

    /// <summary>
    /// Runs a feature on what stood there when the request came. A text that changes meanwhile ends it as outdated, the client's cancelling as
    /// cancelled; either way nobody waits for what still runs.
    /// </summary>
    private async Task<T?> ServeAsync<T>(string? address, bool isSound, Func<FeatureContext, T?> work, CancellationToken cancellation) where T : class
    {
        if (!isSound || DocumentUri.Parse(address) is not { } uri) throw Failure(RpcErrors.InvalidParams);
        if (store?.Read(uri.Normal) is not { } view || view.Workspace.Snapshot is not { } snapshot) return null;
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, view.Document.Outdated.Token);
        try
        {
            var token = either.Token;
            var context = new FeatureContext(view, snapshot, encoding, abilities, settings, path => store.FindIn(view.Document.Home.Key, path), token);
            return await Task.Run(() => work(context), CancellationToken.None).WaitAsync(token).ConfigureAwait(false);
        }
        catch (OperationCanceledException fault) when (!cancellation.IsCancellationRequested)
        {
            throw Failure(RpcErrors.ContentModified, fault);
        }
    }

    /// <summary>Workspaces with open documents, and the client's folders.</summary>
    private List<(WorkspaceHome Home, IWorkspace Workspace)> AllWorkspaces()
    {
        if (store is null) return [];
        var all = new Dictionary<string, (WorkspaceHome Home, IWorkspace Workspace)>(StringComparer.Ordinal);
        foreach (var (key, root) in store.Homes())
        {
            if (store.Workspace(key) is { } workspace) all.TryAdd(key, (new WorkspaceHome(key, root, ""), workspace));
        }

        foreach (var folder in folders)
        {
            var root = workspaces.FindRoot(folder) ?? folder;
            if (!all.ContainsKey(root)) all.Add(root, (new WorkspaceHome(root, root, ""), workspaces.Open(root, options.Today())));
        }

        return [.. all.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => pair.Value)];
    }

    private WorkspaceDiagnosticReport WorkspaceDiagnostics(
        List<(WorkspaceHome Home, IWorkspace Workspace)> homes, Dictionary<string, string?> before, CancellationToken cancellation)
    {
        var items = new List<WorkspaceDocumentDiagnosticReport>();
        foreach (var (home, workspace) in homes)
        {
            foreach (var file in workspace.Snapshot?.Files ?? [])
            {
                cancellation.ThrowIfCancellationRequested();
                var open = store!.FindIn(home.Key, file);
                var address = open?.Uri ?? (home.Root is null ? null : DocumentUri.FromPath(Path.Combine(home.Root, file)));
                if (address is null || workspace.Snapshot!.TreeOf(file) is not { } tree) continue;
                var document = open ?? OpenDocument.First(address, null, tree.Source.Text, home with { Path = file });
                var shown = DiagnosticRendering.Render(workspace.Check(file, cancellation), document, encoding, path => store.FindIn(home.Key, path));
                var id = PulledDiagnostics.IdOf(shown);
                var same = before.GetValueOrDefault(address.Normal) == id;
                items.Add(new WorkspaceDocumentDiagnosticReport(same ? "unchanged" : "full", id, same ? null : shown, address.Spelling, open?.Version));
            }
        }

        return new WorkspaceDiagnosticReport([.. items]);
    }

    private SymbolInformation[] WorkspaceSymbols(List<(WorkspaceHome Home, IWorkspace Workspace)> homes, string query, CancellationToken cancellation)
    {
        var symbols = new List<SymbolInformation>();
        foreach (var (home, workspace) in homes)
        {
            foreach (var file in workspace.Snapshot?.Files ?? [])
            {
                cancellation.ThrowIfCancellationRequested();
                if (workspace.Snapshot!.TreeOf(file) is not { } tree) continue;
                var open = store!.FindIn(home.Key, file);
                var address = open?.Uri.Spelling ?? (home.Root is null ? null : DocumentUri.FromPath(Path.Combine(home.Root, file))?.Normal);
                if (address is null) continue;
                var map = new PositionMap(open?.Source ?? tree.Source, encoding, markCounts: open is not null);
                symbols.AddRange(NameIndex.Of(tree).Uses
                    .Where(use => use.IsDefinition && use.Kind is not NameKind.Station && use.Name.Contains(query, StringComparison.OrdinalIgnoreCase))
                    .Select(use => new SymbolInformation(use.Name, 23, new Location(address, map.ToRange(use.Span)), use.Scope.Length > 0 ? use.Scope : use.Kind.ToString())));
            }
        }

        return [.. symbols];
    }
}
