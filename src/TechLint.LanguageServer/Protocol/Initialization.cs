namespace TechLint.LanguageServer.Protocol;

internal sealed record InitializeParams(
    string? RootUri, string? RootPath, WorkspaceFolder[]? WorkspaceFolders, ClientCapabilities? Capabilities, ClientSettings? InitializationOptions);

internal sealed record ClientCapabilities(
    GeneralClientCapabilities? General, WorkspaceClientCapabilities? Workspace, TextDocumentClientCapabilities? TextDocument, WindowClientCapabilities? Window);

internal sealed record WindowClientCapabilities(bool? WorkDoneProgress);

internal sealed record GeneralClientCapabilities(string[]? PositionEncodings);

internal sealed record WorkspaceClientCapabilities(
    DynamicRegistrationCapability? DidChangeWatchedFiles, bool? Configuration, RefreshCapability? Diagnostics, RefreshCapability? InlayHint, RefreshCapability? CodeLens)
{
    public DynamicRegistrationCapability? DidChangeConfiguration { get; init; }
}

internal sealed record RefreshCapability(bool? RefreshSupport);

internal sealed record TextDocumentClientCapabilities(
    CompletionCapability? Completion, DynamicRegistrationCapability? Diagnostic, SynchronizationCapability? Synchronization = null);

internal sealed record SynchronizationCapability(bool? WillSaveWaitUntil);

internal sealed record CompletionCapability(CompletionItemCapability? CompletionItem, CompletionListCapability? CompletionList = null);

internal sealed record CompletionListCapability(string[]? ItemDefaults);

internal sealed record CompletionItemCapability(bool? SnippetSupport, InsertTextModeSupport? InsertTextModeSupport);

internal sealed record InsertTextModeSupport(int[]? ValueSet);

internal sealed record DynamicRegistrationCapability(bool? DynamicRegistration);

internal sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

internal sealed record ServerInfo(string Name, string Version);

internal sealed record ServerCapabilities(
    string PositionEncoding, TextDocumentSyncOptions TextDocumentSync, bool HoverProvider, CompletionOptions CompletionProvider,
    SignatureHelpOptions SignatureHelpProvider, bool DefinitionProvider, bool ReferencesProvider, bool DocumentHighlightProvider,
    bool DocumentSymbolProvider, bool WorkspaceSymbolProvider, CodeActionOptions CodeActionProvider, CodeLensOptions CodeLensProvider,
    DocumentLinkOptions DocumentLinkProvider, RenameOptions RenameProvider, bool FoldingRangeProvider, bool SelectionRangeProvider,
    SemanticTokensOptions SemanticTokensProvider, bool InlayHintProvider, DiagnosticOptions? DiagnosticProvider, WorkspaceServerCapabilities Workspace,
    bool DocumentFormattingProvider, bool DocumentRangeFormattingProvider, ExecuteCommandOptions ExecuteCommandProvider);

/// <param name="Change">2: incremental.</param>
/// <param name="WillSaveWaitUntil">Null where the client does not ask before it saves.</param>
internal sealed record TextDocumentSyncOptions(bool OpenClose, int Change, SaveOptions Save, bool? WillSaveWaitUntil);

internal sealed record SaveOptions(bool IncludeText);

internal sealed record WorkspaceServerCapabilities(WorkspaceFoldersServerCapabilities WorkspaceFolders);

internal sealed record WorkspaceFoldersServerCapabilities(bool Supported, bool ChangeNotifications);

internal sealed record InitializedParams;
