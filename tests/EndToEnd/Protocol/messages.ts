// What the server may send, by method, in the words of the official protocol package. The schema of every message is made from these.
import type * as P from 'vscode-languageserver-protocol';

/** Results of requests that the client sends. */
export interface Results {
  'initialize': P.InitializeResult;
  'shutdown': null;
  'textDocument/hover': P.Hover | null;
  'textDocument/completion': P.CompletionList | P.CompletionItem[] | null;
  'completionItem/resolve': P.CompletionItem;
  'textDocument/signatureHelp': P.SignatureHelp | null;
  'textDocument/definition': P.Definition | P.LocationLink[] | null;
  'textDocument/references': P.Location[] | null;
  'textDocument/documentHighlight': P.DocumentHighlight[] | null;
  'textDocument/prepareRename': P.PrepareRenameResult | null;
  'textDocument/rename': P.WorkspaceEdit | null;
  'textDocument/documentSymbol': P.DocumentSymbol[] | null;
  'workspace/symbol': P.WorkspaceSymbol[] | P.SymbolInformation[] | null;
  'textDocument/foldingRange': P.FoldingRange[] | null;
  'textDocument/selectionRange': P.SelectionRange[] | null;
  'textDocument/semanticTokens/full': P.SemanticTokens | null;
  'textDocument/semanticTokens/full/delta': P.SemanticTokens | P.SemanticTokensDelta | null;
  'textDocument/semanticTokens/range': P.SemanticTokens | null;
  'textDocument/inlayHint': P.InlayHint[] | null;
  'textDocument/codeLens': P.CodeLens[] | null;
  'codeLens/resolve': P.CodeLens;
  'textDocument/codeAction': (P.Command | P.CodeAction)[] | null;
  'codeAction/resolve': P.CodeAction;
  'textDocument/formatting': P.TextEdit[] | null;
  'textDocument/rangeFormatting': P.TextEdit[] | null;
  'textDocument/onTypeFormatting': P.TextEdit[] | null;
  'textDocument/documentLink': P.DocumentLink[] | null;
  'textDocument/diagnostic': P.DocumentDiagnosticReport;
  'workspace/diagnostic': P.WorkspaceDiagnosticReport;
}

/** Parameters of notifications and requests that the server sends. */
export interface Sent {
  'textDocument/publishDiagnostics': P.PublishDiagnosticsParams;
  'window/showMessage': P.ShowMessageParams;
  'window/logMessage': P.LogMessageParams;
  'window/workDoneProgress/create': P.WorkDoneProgressCreateParams;
  '$/progress': { token: P.ProgressToken; value: P.WorkDoneProgressBegin | P.WorkDoneProgressReport | P.WorkDoneProgressEnd | P.WorkspaceDiagnosticReportPartialResult };
  'client/registerCapability': P.RegistrationParams;
  'client/unregisterCapability': P.UnregistrationParams;
  'workspace/configuration': P.ConfigurationParams;
  'workspace/applyEdit': P.ApplyWorkspaceEditParams;
}
