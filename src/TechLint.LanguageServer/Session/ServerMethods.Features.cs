using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;

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

    private ServerCapabilities Announced() => new(
        encoding.Name(),
        new TextDocumentSyncOptions(OpenClose: true, Change: 2, new SaveOptions(IncludeText: false), abilities.AsksBeforeSaving ? true : null),
        HoverProvider: true,
        new CompletionOptions([":", " ", "{", "[", ",", "-", "/"]),
        new SignatureHelpOptions(["{", ","]),
        DefinitionProvider: true,
        ReferencesProvider: true,
        DocumentHighlightProvider: true,
        DocumentSymbolProvider: true,
        WorkspaceSymbolProvider: true,
        new CodeActionOptions([CodeActions.QuickFix, CodeActions.Rewrite, CodeActions.FixAll]),
        new CodeLensOptions(ResolveProvider: true),
        new DocumentLinkOptions(ResolveProvider: false),
        new RenameOptions(PrepareProvider: true),
        FoldingRangeProvider: true,
        SelectionRangeProvider: true,
        new SemanticTokensOptions(Outlines.Legend, Range: true, Full: true),
        InlayHintProvider: true,
        abilities.PullsDiagnostics ? new DiagnosticOptions("techlint", InterFileDependencies: true, WorkspaceDiagnostics: true, WorkDoneProgress: true) : null,
        new WorkspaceServerCapabilities(new WorkspaceFoldersServerCapabilities(Supported: true, ChangeNotifications: true)),
        DocumentFormattingProvider: true,
        DocumentRangeFormattingProvider: true,
        new ExecuteCommandOptions([ComputedHints.Show]));

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
}
