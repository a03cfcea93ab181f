using System.Text;
using TechLint.LanguageServer.Protocol;
using TechLint.Syntax;
using Range = TechLint.LanguageServer.Protocol.Range;

namespace TechLint.LanguageServer.Documents;

/// <summary>
/// Between a text's offsets and a client's positions. Any position is taken: one past the end of a line or of the text is
/// clamped to it, one inside a character goes to its start, except that UTF-16 may count halves of a surrogate pair.
/// </summary>
/// <param name="markCounts">
/// Whether a byte order mark takes a column. It does in a text that the client sent: had its editor hidden the mark, it would
/// not be there. It does not in a text from the disk.
/// </param>
internal sealed class PositionMap(SourceText source, PositionEncoding encoding, bool markCounts)
{
    private readonly string text = source.Text;
    private readonly LineMap lines = source.Lines;

    public Range ToRange(TextSpan span) => new(ToPosition(span.Start), ToPosition(span.End));

    public Position ToPosition(int offset)
    {
        offset = Math.Clamp(offset, 0, text.Length);
        var line = lines.LineOf(offset);
        var first = FirstColumn(line);
        var end = Math.Max(first, Math.Min(offset, lines.EndOf(line)));
        if (encoding != PositionEncoding.Utf16 && SplitsPair(end)) end--;
        var before = text.AsSpan(first, end - first);
        return new Position(line, encoding switch
        {
            PositionEncoding.Utf8 => Encoding.UTF8.GetByteCount(before),
            PositionEncoding.Utf32 => CodePoints(before),
            _ => before.Length,
        });
    }

    public int ToOffset(Position position)
    {
        if (position.Line < 0) return 0;
        if (position.Line >= lines.LineCount) return text.Length;
        var line = (int)position.Line;
        var at = FirstColumn(line);
        var end = Math.Max(at, lines.EndOf(line));
        if (encoding == PositionEncoding.Utf16) return at + (int)Math.Clamp(position.Character, 0, end - at);
        long column = 0;
        while (at < end)
        {
            Rune.DecodeFromUtf16(text.AsSpan(at, end - at), out var rune, out var units);
            column += encoding == PositionEncoding.Utf8 ? rune.Utf8SequenceLength : 1;
            if (column > position.Character) break;
            at += units;
        }

        return at;
    }

    private int FirstColumn(int line) => line == 0 && !markCounts && text.StartsWith('\uFEFF') ? 1 : lines.StartOf(line);

    private bool SplitsPair(int offset) =>
        offset > 0 && offset < text.Length && char.IsHighSurrogate(text[offset - 1]) && char.IsLowSurrogate(text[offset]);

    private static int CodePoints(ReadOnlySpan<char> characters)
    {
        var count = 0;
        foreach (var _ in characters.EnumerateRunes()) count++;
        return count;
    }
}
