using System.Text.Json;
using StreamJsonRpc;

namespace TechLint.LanguageServer.Transport;

internal enum EnvelopeKind { Request, Notification, Response, Invalid, NotJson }

/// <summary>
/// The outside of a JSON-RPC message, read without building it: what the door needs to know to let it in or to answer it.
/// </summary>
/// <param name="Id">Of a request; <see cref="RequestId.Null"/> where the message has none that can be answered.</param>
/// <param name="Params">The kind of value that <c>params</c> holds; <see cref="JsonTokenType.None"/> where there is none.</param>
/// <param name="TargetIdIsValid">Whether <c>params.id</c> is a number or a text, as <c>$/cancelRequest</c> needs it.</param>
internal readonly record struct Envelope(EnvelopeKind Kind, RequestId Id, string Method, JsonTokenType Params, bool TargetIdIsValid)
{
    public static Envelope Read(ReadOnlySpan<byte> payload)
    {
        try
        {
            return ReadObject(payload);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return new Envelope(EnvelopeKind.NotJson, RequestId.Null, "", JsonTokenType.None, false);
        }
    }

    private static Envelope ReadObject(ReadOnlySpan<byte> payload)
    {
        var reader = new Utf8JsonReader(payload);
        if (!reader.Read()) throw new JsonException();
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            reader.Skip();
            return new Envelope(EndsHere(ref reader), RequestId.Null, "", JsonTokenType.None, false);
        }

        var (version, hasId, hasAnswer, badMember, targetIdIsValid) = (false, false, false, false, false);
        var id = RequestId.Null;
        string? method = null;
        var parameters = JsonTokenType.None;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            if (reader.ValueTextEquals("jsonrpc"u8))
            {
                reader.Read();
                version = reader.TokenType == JsonTokenType.String && reader.ValueTextEquals("2.0"u8);
            }
            else if (reader.ValueTextEquals("id"u8))
            {
                reader.Read();
                hasId = true;
                if (reader.TokenType == JsonTokenType.String) id = new RequestId(reader.GetString());
                else if (reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out var number)) id = new RequestId(number);
                else badMember = true;
            }
            else if (reader.ValueTextEquals("method"u8))
            {
                reader.Read();
                if (reader.TokenType == JsonTokenType.String) method = reader.GetString();
                else badMember = true;
            }
            else if (reader.ValueTextEquals("params"u8))
            {
                reader.Read();
                parameters = reader.TokenType;
                targetIdIsValid = parameters == JsonTokenType.StartObject && HoldsId(reader);
            }
            else
            {
                var (isResult, isError) = (reader.ValueTextEquals("result"u8), reader.ValueTextEquals("error"u8));
                reader.Read();
                hasAnswer |= isResult || (isError && reader.TokenType == JsonTokenType.StartObject);
            }

            reader.Skip();
        }

        var kind = EndsHere(ref reader) == EnvelopeKind.NotJson ? EnvelopeKind.NotJson
            : badMember || !version ? EnvelopeKind.Invalid
            : method is not null ? hasId ? EnvelopeKind.Request : EnvelopeKind.Notification
            : hasId && hasAnswer ? EnvelopeKind.Response
            : EnvelopeKind.Invalid;
        return new Envelope(kind, id, method ?? "", parameters, targetIdIsValid);
    }

    /// <summary>Works on a copy of the reader, which stands at the parameters' opening brace.</summary>
    private static bool HoldsId(Utf8JsonReader reader)
    {
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var isId = reader.ValueTextEquals("id"u8);
            reader.Read();
            if (isId) return reader.TokenType == JsonTokenType.String || (reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out _));
            reader.Skip();
        }

        return false;
    }

    /// <summary>A whole value that is no object is a message, but none that means anything here; more behind it is no JSON.</summary>
    private static EnvelopeKind EndsHere(ref Utf8JsonReader reader) => reader.Read() ? EnvelopeKind.NotJson : EnvelopeKind.Invalid;
}
