namespace TechLint.Syntax;

/// <summary>
/// Reads a stretch of a text as if blanks stood before it up to its column, so that a piece from the middle of a line is
/// indented for a parser as it is in the file. What YAML forbids outright (a NUL would end the parser's text unseen) is
/// read as the replacement character; the problem is told elsewhere.
/// </summary>
internal sealed class StretchReader(string text, int start, int end, int column) : TextReader
{
    private int blanks = column;
    private int at = start;

    public override int Peek() => blanks > 0 ? ' ' : at < end ? Readable(text[at]) : -1;

    public override int Read()
    {
        if (blanks > 0)
        {
            blanks--;
            return ' ';
        }

        return at < end ? Readable(text[at++]) : -1;
    }

    public override int Read(char[] buffer, int index, int count)
    {
        var done = 0;
        for (; done < count; done++)
        {
            var next = Read();
            if (next < 0) break;
            buffer[index + done] = (char)next;
        }

        return done;
    }

    private static char Readable(char c) => c == '\0' ? '\uFFFD' : c;
}
