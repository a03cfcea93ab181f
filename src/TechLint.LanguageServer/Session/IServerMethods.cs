using PolyType;
using StreamJsonRpc;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>The messages that the server understands. What is not here is answered with "method not found" or, a notification, ignored.</summary>
[JsonRpcContract]
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
internal partial interface IServerMethods
{
    [JsonRpcMethod("initialize", UseSingleObjectParameterDeserialization = true)]
    Task<InitializeResult> InitializeAsync(InitializeParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("initialized", UseSingleObjectParameterDeserialization = true)]
    void Initialized(InitializedParams? parameters = null);

    [JsonRpcMethod("shutdown")]
    Task ShutdownAsync();

    [JsonRpcMethod("exit")]
    void Exit();

    [JsonRpcMethod("textDocument/didOpen", UseSingleObjectParameterDeserialization = true)]
    void DidOpen(DidOpenParams? parameters);

    [JsonRpcMethod("textDocument/didChange", UseSingleObjectParameterDeserialization = true)]
    void DidChange(DidChangeParams? parameters);

    [JsonRpcMethod("textDocument/didSave", UseSingleObjectParameterDeserialization = true)]
    void DidSave(DidSaveParams? parameters);

    [JsonRpcMethod("textDocument/didClose", UseSingleObjectParameterDeserialization = true)]
    void DidClose(DidCloseParams? parameters);

    [JsonRpcMethod("textDocument/hover", UseSingleObjectParameterDeserialization = true)]
    Task<HoverResult?> HoverAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/completion", UseSingleObjectParameterDeserialization = true)]
    Task<CompletionList?> CompletionAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/signatureHelp", UseSingleObjectParameterDeserialization = true)]
    Task<SignatureHelp?> SignatureHelpAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/codeAction", UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction[]?> CodeActionAsync(CodeActionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/definition", UseSingleObjectParameterDeserialization = true)]
    Task<Location[]?> DefinitionAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/references", UseSingleObjectParameterDeserialization = true)]
    Task<Location[]?> ReferencesAsync(ReferenceParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/documentHighlight", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentHighlight[]?> DocumentHighlightAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/prepareRename", UseSingleObjectParameterDeserialization = true)]
    Task<PrepareRenameResult?> PrepareRenameAsync(TextDocumentPositionParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/rename", UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceEdit?> RenameAsync(RenameParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/documentSymbol", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentSymbol[]?> DocumentSymbolAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("workspace/symbol", UseSingleObjectParameterDeserialization = true)]
    Task<SymbolInformation[]?> WorkspaceSymbolAsync(WorkspaceSymbolParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/foldingRange", UseSingleObjectParameterDeserialization = true)]
    Task<FoldingRange[]?> FoldingRangeAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/selectionRange", UseSingleObjectParameterDeserialization = true)]
    Task<SelectionRange[]?> SelectionRangeAsync(SelectionRangeParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/semanticTokens/full", UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokens?> SemanticTokensFullAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/semanticTokens/range", UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokens?> SemanticTokensRangeAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/documentLink", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentLink[]?> DocumentLinkAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/inlayHint", UseSingleObjectParameterDeserialization = true)]
    Task<InlayHint[]?> InlayHintAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/codeLens", UseSingleObjectParameterDeserialization = true)]
    Task<CodeLens[]?> CodeLensAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/diagnostic", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentDiagnosticReport?> DocumentDiagnosticAsync(DocumentDiagnosticParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("workspace/diagnostic", UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceDiagnosticReport> WorkspaceDiagnosticAsync(WorkspaceDiagnosticParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("window/workDoneProgress/cancel", UseSingleObjectParameterDeserialization = true)]
    void CancelProgress(WorkDoneProgressCancelParams? parameters);

    [JsonRpcMethod("workspace/didChangeConfiguration", UseSingleObjectParameterDeserialization = true)]
    void DidChangeConfiguration(DidChangeConfigurationParams? parameters);

    [JsonRpcMethod("workspace/didChangeWatchedFiles", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWatchedFiles(DidChangeWatchedFilesParams? parameters);

    [JsonRpcMethod("workspace/didChangeWorkspaceFolders", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams? parameters);
}
