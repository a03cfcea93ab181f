using TechLint.Engine.Navigating;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

// What concerns whole workspaces: their symbols and findings, the client's settings, and who is told when something changes.
internal sealed partial class ServerMethods
{
    /// <summary>Definitions of every file of the workspaces, whose names hold the query.</summary>
    public Task<SymbolInformation[]?> WorkspaceSymbolAsync(WorkspaceSymbolParams? parameters, CancellationToken cancellation)
    {
        var views = store?.Views() ?? [];
        return Task.Run<SymbolInformation[]?>(() => WorkspaceSymbols(views, parameters?.Query ?? "", cancellation), cancellation);
    }

    public Task<WorkspaceDiagnosticReport> WorkspaceDiagnosticAsync(WorkspaceDiagnosticParams? parameters, CancellationToken cancellation)
    {
        if (store is null || desk is null) return Task.FromResult(new WorkspaceDiagnosticReport([]));
        if (!abilities.WatchesFiles) store.RefreshAll();
        return new WorkspaceReport(client, desk, encoding).MakeAsync(store.Views(), parameters, cancellation);
    }

    public void CancelProgress(WorkDoneProgressCancelParams? parameters)
    {
        if (parameters?.Token is { } token) desk?.Cancel(token);
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
        RefreshComputed();
        if (!abilities.PullsDiagnostics) watch?.Request();
    }

    /// <summary>What is computed may be other numbers now: the client asks again where it lets itself be told.</summary>
    private void RefreshComputed()
    {
        if (abilities.RefreshesHints) _ = client.RefreshAsync("workspace/inlayHint/refresh");
        if (abilities.RefreshesLenses) _ = client.RefreshAsync("workspace/codeLens/refresh");
    }

    private void SurroundingsChanged(bool ofOpenDocuments)
    {
        if (!abilities.PullsDiagnostics) watch!.Request();
        if (!ofOpenDocuments) return;
        if (abilities.PullsDiagnostics) _ = client.RefreshAsync("workspace/diagnostic/refresh");
        RefreshComputed();
    }

    private SymbolInformation[] WorkspaceSymbols(IReadOnlyList<WorkspaceView> views, string query, CancellationToken cancellation)
    {
        var symbols = new List<SymbolInformation>();
        foreach (var file in WorkspaceFiles.Of(views))
        {
            cancellation.ThrowIfCancellationRequested();
            if (file.View.Workspace.Snapshot?.TreeOf(file.Path) is not { } tree) continue;
            var map = new PositionMap(tree.Source, encoding, markCounts: file.Open is not null);
            symbols.AddRange(NameIndex.Of(tree).Uses
                .Where(use => use.IsDefinition && use.Kind is not NameKind.Station && use.Name.Contains(query, StringComparison.OrdinalIgnoreCase))
                .Select(use => new SymbolInformation(
                    use.Name, 23, new Location(file.Uri.Spelling, map.ToRange(use.Span)), use.Scope.Length > 0 ? use.Scope : use.Kind.ToString())));
        }

        return [.. symbols];
    }
}
