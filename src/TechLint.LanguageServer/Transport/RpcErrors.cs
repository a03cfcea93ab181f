using System.Buffers;
using System.Text.Json;
using StreamJsonRpc;

namespace TechLint.LanguageServer.Transport;

/// <summary>Error codes of JSON-RPC 2.0 and of LSP 3.17 (section "Response Message").</summary>
internal static class RpcErrors
{
    public const int ParseError = -32700;
    public const int InvalidRequest = -32600;
    public const int MethodNotFound = -32601;
    public const int InvalidParams = -32602;
    public const int InternalError = -32603;
    public const int ServerNotInitialized = -32002;
    /// <summary>The one code whose text is the method's own: why a sound request cannot be served.</summary>
    public const int RequestFailed = -32803;
    public const int ContentModified = -32801;
    public const int RequestCancelled = -32800;

    /// <summary>
    /// What a client is told, by code: the texts that the library or an exception would give speak of the server's inside.
    /// </summary>
    public static string TextOf(int code) => code switch
    {
        MethodNotFound => "The server has no such method",
        InvalidParams => "The parameters are missing or cannot be read",
        ContentModified => "The document has changed meanwhile",
        RequestCancelled => "The request was cancelled",
        _ => "An error inside techlint: the request could not be served",
    };

    /// <summary>An error response as it goes on the wire; its id is null where the request's could not be read.</summary>
    public static ReadOnlyMemory<byte> Response(RequestId id, int code, string message)
    {
        var buffer = new ArrayBufferWriter<byte>(128);
        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        json.WriteString("jsonrpc"u8, "2.0"u8);
        WriteId(json, id);
        json.WriteStartObject("error"u8);
        json.WriteNumber("code"u8, code);
        json.WriteString("message"u8, message);
        json.WriteEndObject();
        json.WriteEndObject();
        json.Flush();
        return buffer.WrittenMemory;
    }

    /// <summary>A message without parameters; a notification where <paramref name="id"/> is null.</summary>
    public static byte[] Call(RequestId? id, string method)
    {
        var buffer = new ArrayBufferWriter<byte>(64);
        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        json.WriteString("jsonrpc"u8, "2.0"u8);
        if (id is { } known) WriteId(json, known);
        json.WriteString("method"u8, method);
        json.WriteEndObject();
        json.Flush();
        return buffer.WrittenSpan.ToArray();
    }

    private static void WriteId(Utf8JsonWriter json, RequestId id)
    {
        if (id.Number is { } number) json.WriteNumber("id"u8, number);
        else if (id.String is { } text) json.WriteString("id"u8, text);
        else json.WriteNull("id"u8);
    }
}
