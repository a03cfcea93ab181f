using System.Text;
using System.Text.Json.Nodes;

namespace TechLint.Tests.Shared;

/// <summary>A text as an editor sees it: lines, and columns in the units that were agreed. Shares no code with the server.</summary>
internal sealed class ClientText
{
    private readonly string text;
    private readonly string encoding;
    private readonly List<(int Start, int End)> lines = [];

    /// <param name="encoding"><c>utf-8</c>, <c>utf-16</c> or <c>utf-32</c>.</param>
    public ClientText(string text, string encoding = "utf-16")
    {
        this.text = text;
        this.encoding = encoding;
        var start = 0;
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] is not ('\n' or '\r')) continue;
            lines.Add((start, at));
            if (text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n') at++;
            start = at + 1;
        }

        lines.Add((start, text.Length));
    }

    public int LineCount => lines.Count;

    /// <summary>In the agreed units, without the line's end.</summary>
    public int LengthOf(int line) => Units(text.AsSpan(lines[line].Start, lines[line].End - lines[line].Start));

    public JsonObject PositionOf(int offset)
    {
        var line = lines.FindLastIndex(one => one.Start <= offset);
        return RawLspClient.Position(line, Units(text.AsSpan(lines[line].Start, Math.Min(offset, lines[line].End) - lines[line].Start)));
    }

    /// <summary>In UTF-16 units from the text's start; -1 for a place inside a character.</summary>
    public int OffsetOf(int line, int character)
    {
        var (start, end) = lines[line];
        for (var (at, column) = (start, 0); ;)
        {
            if (column == character) return at;
            if (at >= end || column > character) return -1;
            Rune.DecodeFromUtf16(text.AsSpan(at, end - at), out _, out var length);
            column += Units(text.AsSpan(at, length));
            at += length;
        }
    }

    private int Units(ReadOnlySpan<char> part) => encoding switch
    {
        "utf-8" => Encoding.UTF8.GetByteCount(part),
        "utf-32" => CountOf(part),
        _ => part.Length,
    };

    private static int CountOf(ReadOnlySpan<char> part)
    {
        var count = 0;
        foreach (var _ in part.EnumerateRunes()) count++;
        return count;
    }
}
