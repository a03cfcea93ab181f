using StreamJsonRpc;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

internal partial interface IServerMethods
{
    [JsonRpcMethod("textDocument/formatting", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]?> FormattingAsync(TextDocumentParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/rangeFormatting", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]?> RangeFormattingAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation);

    [JsonRpcMethod("textDocument/willSaveWaitUntil", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]?> WillSaveWaitUntilAsync(WillSaveParams? parameters, CancellationToken cancellation);
}
