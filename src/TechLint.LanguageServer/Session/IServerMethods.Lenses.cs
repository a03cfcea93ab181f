using StreamJsonRpc;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

internal partial interface IServerMethods
{
    [JsonRpcMethod("codeLens/resolve", UseSingleObjectParameterDeserialization = true)]
    Task<CodeLens?> CodeLensResolveAsync(CodeLens? lens, CancellationToken cancellation);

    [JsonRpcMethod("workspace/executeCommand", UseSingleObjectParameterDeserialization = true)]
    Task<object?> ExecuteCommandAsync(ExecuteCommandParams? parameters, CancellationToken cancellation);
}
