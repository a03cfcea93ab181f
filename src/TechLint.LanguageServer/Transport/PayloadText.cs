using System.Text;
using System.Text.Unicode;

namespace TechLint.LanguageServer.Transport;

/// <summary>
/// Makes a payload readable whatever an editor put into its strings: bytes that are no UTF-8, and halves of surrogate pairs
/// in escapes (a buffer may hold one), become the replacement character. Neither changes a length that positions count.
/// </summary>
internal static class PayloadText
{
    public static byte[] Mended(byte[] payload)
    {
        var text = Utf8.IsValid(payload) ? payload : Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(payload));
        for (var i = 0; i + 5 < text.Length; i++)
        {
            if (text[i] != '\\') continue;
            if (text[i + 1] != 'u')
            {
                i++;
                continue;
            }

            var (high, low) = (IsHalf(text, i, high: true), IsHalf(text, i, high: false));
            if (high && i + 11 < text.Length && IsHalf(text, i + 6, high: false))
            {
                i += 11;
                continue;
            }

            if (high || low) "fffd"u8.CopyTo(text.AsSpan(i + 2));
            i += 5;
        }

        return text;
    }

    /// <summary>Whether <c>\ud8xx</c> to <c>\udbxx</c> (high) or <c>\udcxx</c> to <c>\udfxx</c> (low) stands at an index.</summary>
    private static bool IsHalf(byte[] text, int at, bool high) =>
        text[at] == '\\' && text[at + 1] == 'u' && (text[at + 2] | 0x20) == 'd'
        && (high
            ? text[at + 3] is (byte)'8' or (byte)'9' or (byte)'a' or (byte)'A' or (byte)'b' or (byte)'B'
            : text[at + 3] is >= (byte)'c' and <= (byte)'f' or >= (byte)'C' and <= (byte)'F');
}
