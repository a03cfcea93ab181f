using System.Text.Json.Serialization;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace TechLint.LanguageServer.Protocol;

/// <summary>
/// How the protocol's types are read and written, generated at build. <see cref="RequestId"/> is here so that a request can be
/// cancelled, <see cref="CommonErrorData"/> so that an error can be sent: the library looks both up.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(RequestId))]
[JsonSerializable(typeof(CommonErrorData))]
[JsonSerializable(typeof(InitializeParams))]
[JsonSerializable(typeof(InitializeResult))]
[JsonSerializable(typeof(InitializedParams))]
[JsonSerializable(typeof(DidOpenParams))]
[JsonSerializable(typeof(DidChangeParams))]
[JsonSerializable(typeof(DidSaveParams))]
[JsonSerializable(typeof(DidCloseParams))]
[JsonSerializable(typeof(TextDocumentPositionParams))]
[JsonSerializable(typeof(HoverResult))]
[JsonSerializable(typeof(Diagnostic[]))]
[JsonSerializable(typeof(DidChangeWatchedFilesParams))]
[JsonSerializable(typeof(DidChangeWorkspaceFoldersParams))]
[JsonSerializable(typeof(Registration[]))]
[JsonSerializable(typeof(ClientSettings[]))]
[JsonSerializable(typeof(CodeActionParams))]
[JsonSerializable(typeof(CodeAction[]))]
[JsonSerializable(typeof(CodeLens[]))]
[JsonSerializable(typeof(CompletionList))]
[JsonSerializable(typeof(ConfigurationItem[]))]
[JsonSerializable(typeof(DidChangeConfigurationParams))]
[JsonSerializable(typeof(DocumentDiagnosticParams))]
[JsonSerializable(typeof(DocumentDiagnosticReport))]
[JsonSerializable(typeof(DocumentHighlight[]))]
[JsonSerializable(typeof(DocumentLink[]))]
[JsonSerializable(typeof(DocumentSymbol[]))]
[JsonSerializable(typeof(FoldingRange[]))]
[JsonSerializable(typeof(InlayHint[]))]
[JsonSerializable(typeof(Location[]))]
[JsonSerializable(typeof(PrepareRenameResult))]
[JsonSerializable(typeof(ReferenceParams))]
[JsonSerializable(typeof(RenameParams))]
[JsonSerializable(typeof(SelectionRangeParams))]
[JsonSerializable(typeof(SelectionRange[]))]
[JsonSerializable(typeof(SemanticTokens))]
[JsonSerializable(typeof(SignatureHelp))]
[JsonSerializable(typeof(SymbolInformation[]))]
[JsonSerializable(typeof(TextDocumentParams))]
[JsonSerializable(typeof(TextDocumentRangeParams))]
[JsonSerializable(typeof(WorkspaceDiagnosticParams))]
[JsonSerializable(typeof(WorkspaceDiagnosticReport))]
[JsonSerializable(typeof(WorkspaceEdit))]
[JsonSerializable(typeof(WorkspaceSymbolParams))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(int))]
[JsonSerializable(typeof(long))]
[JsonSerializable(typeof(object))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
