using System.Text.Encodings.Web;
using System.Text.Json;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports;

/// <summary>How every JSON of ours looks: two blanks a level, line feeds, letters of all scripts as they are, no exponents.</summary>
internal static class JsonWriting
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes one document and a line end.</summary>
    public static void Write(TextWriter output, Action<Utf8JsonWriter> content)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Options)) content(writer);
        output.Write(System.Text.Encoding.UTF8.GetString(buffer.GetBuffer().AsSpan(0, (int)buffer.Length)));
        output.Write('\n');
    }

    public static void Number(this Utf8JsonWriter writer, string name, decimal value)
    {
        writer.WritePropertyName(name);
        writer.WriteRawValue(Digits.Text(value), skipInputValidation: true);
    }

    /// <summary>A computed number, to four digits behind the point; null where it is none.</summary>
    public static void Number(this Utf8JsonWriter writer, string name, double? value)
    {
        writer.WritePropertyName(name);
        writer.Number(value);
    }

    /// <inheritdoc cref="Number(Utf8JsonWriter, string, double?)"/>
    public static void Number(this Utf8JsonWriter writer, double? value)
    {
        if (value is { } number && Digits.Rounded(number, 4) is { } rounded)
        {
            writer.WriteRawValue(Digits.Text(rounded), skipInputValidation: true);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
