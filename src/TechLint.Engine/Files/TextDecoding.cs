using System.Text;

namespace TechLint.Engine.Files;

/// <summary>Bytes to text: UTF-8 with or without byte order mark, UTF-16 by its mark. The mark stays as the first character.</summary>
public static class TextDecoding
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly UnicodeEncoding LittleEndian = new(bigEndian: false, byteOrderMark: true, throwOnInvalidBytes: true);
    private static readonly UnicodeEncoding BigEndian = new(bigEndian: true, byteOrderMark: true, throwOnInvalidBytes: true);

    /// <summary>The text, or null where the bytes are none in these encodings. A NUL belongs in no text, but in most other data.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes)
    {
        Encoding encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => LittleEndian,
            [0xFE, 0xFF, ..] => BigEndian,
            _ => Utf8,
        };
        try
        {
            var text = encoding.GetString(bytes);
            return text.Contains('\0', StringComparison.Ordinal) ? null : text;
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
