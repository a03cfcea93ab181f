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
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(int))]
[JsonSerializable(typeof(long))]
[JsonSerializable(typeof(object))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
