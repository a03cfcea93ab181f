using System.Text.Json;
using System.Text.Json.Serialization;

namespace TechLint.LanguageServer.Protocol;

/// <summary>What a progress is known by: a number or a text; two are one when they are written alike.</summary>
[JsonConverter(typeof(ProgressTokenConverter))]
internal sealed record ProgressToken(string? Text, long? Number);

/// <summary>What is neither a number nor a text is no token, and nobody is told by it.</summary>
internal sealed class ProgressTokenConverter : JsonConverter<ProgressToken>
{
    public override ProgressToken? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.String:
                return new ProgressToken(reader.GetString(), null);
            case JsonTokenType.Number when reader.TryGetInt64(out var number):
                return new ProgressToken(null, number);
            default:
                reader.Skip();
                return null;
        }
    }

    public override void Write(Utf8JsonWriter writer, ProgressToken value, JsonSerializerOptions options)
    {
        if (value.Number is { } number) writer.WriteNumberValue(number);
        else writer.WriteStringValue(value.Text);
    }
}

/// <param name="Kind"><c>begin</c>, <c>report</c> or <c>end</c>.</param>
/// <param name="Title">Of a beginning.</param>
/// <param name="Percentage">0 to 100, never less than before.</param>
internal sealed record WorkDoneProgress(string Kind, string? Title, bool? Cancellable, string? Message, int? Percentage);

internal sealed record WorkDoneProgressCancelParams(ProgressToken? Token);
