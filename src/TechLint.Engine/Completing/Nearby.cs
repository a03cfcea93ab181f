using TechLint.Syntax;

namespace TechLint.Engine.Completing;

/// <summary>
/// A long text without the entries of the caret's own list that the caret is not in: a technique of thousands of lines is one list of setups, and
/// what may be written in one depends on that one alone. Told from indentation: to know it from a tree would cost what is saved.
/// </summary>
/// <param name="Source">What is left, in whole lines.</param>
/// <param name="Offset">The caret in it.</param>
/// <param name="Removed">Characters left out before the caret.</param>
internal readonly record struct Nearby(SourceText Source, int Offset, int Removed)
{
    /// <summary>Below it nothing is gained.</summary>
    private const int Short = 4000;

    public static Nearby Of(SourceText source, int offset)
    {
        var text = source.Text;
        var whole = new Nearby(source, offset, 0);

        // A merge may take what stands in another entry.
        if (text.Length < Short || text.Contains("<<:", StringComparison.Ordinal)) return whole;
        var lines = source.Lines;
        var caret = lines.LineOf(offset);
        var first = caret;
        while (first > 0 && !BeginsRoot(text, lines, first)) first--;
        var last = caret + 1;
        while (last < lines.LineCount && !BeginsRoot(text, lines, last)) last++;
        var dash = -1;
        var (start, end) = (-1, -1);
        var firstDash = -1;
        for (var line = first; line < last; line++)
        {
            if (DashAt(text, lines, line) is not { } column || (dash >= 0 && column != dash)) continue;
            if (dash < 0) (dash, firstDash) = (column, line);
            if (line <= caret) start = line;
            else if (end < 0) end = line;
        }

        if (dash < 0) return whole;
        if (start < 0) start = firstDash;
        if (end < 0 || end <= start) end = NextDash(text, lines, start, last, dash);
        var (head, from, to, tail) = (lines.StartOf(firstDash), lines.StartOf(start), StartOf(end), StartOf(last));
        if (offset >= head && (offset < from || offset > to)) return whole;
        var removed = offset >= from ? from - head : 0;
        return new Nearby(
            new SourceText(source.Path, string.Concat(text.AsSpan(0, head), text.AsSpan(from, to - from), text.AsSpan(tail))), offset - removed, removed);

        int StartOf(int line) => line < lines.LineCount ? lines.StartOf(line) : text.Length;
    }

    private static int NextDash(string text, LineMap lines, int start, int last, int dash)
    {
        var line = start + 1;
        while (line < last && DashAt(text, lines, line) != dash) line++;
        return line;
    }

    /// <summary>A key, or anything else that is no comment, in the first column. An entry there belongs to the key before it.</summary>
    private static bool BeginsRoot(string text, LineMap lines, int line)
    {
        var (start, end) = (lines.StartOf(line), lines.EndOf(line));
        return end > start && text[start] is not (' ' or '#' or '-' or '}' or ']');
    }

    private static int? DashAt(string text, LineMap lines, int line)
    {
        var (start, end) = (lines.StartOf(line), lines.EndOf(line));
        var at = start;
        while (at < end && text[at] == ' ') at++;
        return at < end && text[at] == '-' && (at + 1 == end || text[at + 1] == ' ') ? at - start : null;
    }
}
