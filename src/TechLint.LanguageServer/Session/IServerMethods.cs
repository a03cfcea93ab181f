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

    [JsonRpcMethod("workspace/didChangeWatchedFiles", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWatchedFiles(DidChangeWatchedFilesParams? parameters);

    [JsonRpcMethod("workspace/didChangeWorkspaceFolders", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams? parameters);
}
