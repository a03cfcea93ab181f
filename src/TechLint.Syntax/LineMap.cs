namespace TechLint.Syntax;

/// <summary>
/// Turns UTF-16 offsets into lines and columns and back. Lines end at LF, CR LF or a lone CR; a byte order mark at the
/// start of the text takes no column. Lines and columns count from 0 here; the front doors add what their format asks for.
/// </summary>
public sealed class LineMap
{
    private readonly string text;
    private readonly int[] starts;

    public LineMap(string text)
    {
        this.text = text;
        var found = new List<int> { 0 };
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\r' && i + 1 < text.Length && text[i + 1] == '\n') i++;
            if (text[i] is '\n' or '\r') found.Add(i + 1);
        }

        starts = [.. found];
    }

    public int LineCount => starts.Length;

    /// <summary>The 0-based line that holds an offset; offsets outside the text are clamped to it.</summary>
    public int LineOf(int offset)
    {
        var at = Array.BinarySearch(starts, Math.Clamp(offset, 0, text.Length));
        return at >= 0 ? at : ~at - 1;
    }

    public int StartOf(int line) => starts[Math.Clamp(line, 0, starts.Length - 1)];

    /// <summary>The offset just before a line's terminator.</summary>
    public int EndOf(int line)
    {
        line = Math.Clamp(line, 0, starts.Length - 1);
        var end = line + 1 < starts.Length ? starts[line + 1] : text.Length;
        while (end > starts[line] && text[end - 1] is '\n' or '\r') end--;
        return end;
    }

    /// <summary>Column in Unicode code points, from 0.</summary>
    public int CodePointColumn(int offset)
    {
        var column = 0;
        offset = Math.Clamp(offset, 0, text.Length);
        for (var i = FirstColumn(LineOf(offset)); i < offset; i++)
        {
            if (!(char.IsLowSurrogate(text[i]) && i > 0 && char.IsHighSurrogate(text[i - 1]))) column++;
        }

        return column;
    }

    /// <summary>Column in UTF-16 code units, from 0.</summary>
    public int Utf16Column(int offset) => Math.Max(0, Math.Clamp(offset, 0, text.Length) - FirstColumn(LineOf(offset)));

    /// <summary>Column in UTF-8 bytes, from 0.</summary>
    public int Utf8Column(int offset)
    {
        offset = Math.Clamp(offset, 0, text.Length);
        var first = FirstColumn(LineOf(offset));
        return offset <= first ? 0 : System.Text.Encoding.UTF8.GetByteCount(text.AsSpan(first, offset - first));
    }

    /// <summary>The offset of a UTF-16 position; a column past the line's end is clamped to it.</summary>
    public int OffsetOfUtf16(int line, int column)
    {
        if (line >= starts.Length) return text.Length;
        if (line < 0) return 0;
        return (int)Math.Clamp((long)FirstColumn(line) + column, FirstColumn(line), EndOf(line));
    }

    /// <summary>The offset of a UTF-8 position; a column past the line's end, or inside a character, is clamped.</summary>
    public int OffsetOfUtf8(int line, int column)
    {
        if (line >= starts.Length) return text.Length;
        if (line < 0) return 0;
        var at = FirstColumn(line);
        var end = EndOf(line);
        var bytes = 0;
        while (at < end)
        {
            System.Text.Rune.DecodeFromUtf16(text.AsSpan(at, end - at), out var rune, out var consumed);
            if (bytes + rune.Utf8SequenceLength > column) break;
            bytes += rune.Utf8SequenceLength;
            at += consumed;
        }

        return at;
    }

    private int FirstColumn(int line) => line == 0 && text.Length > 0 && text[0] == '\uFEFF' ? 1 : starts[line];
}
