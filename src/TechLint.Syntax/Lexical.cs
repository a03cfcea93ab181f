namespace TechLint.Syntax;

/// <summary>Where the small parts of YAML text begin and end. Offsets go in and come out; nothing is allocated.</summary>
internal static class Lexical
{
    public static bool IsBreak(char c) => c is '\n' or '\r';

    public static bool IsBlank(char c) => c is ' ' or '\t';

    public static bool IsSpace(char c) => c is ' ' or '\t' or '\n' or '\r';

    public static bool IsFlowMark(char c) => c is ',' or '[' or ']' or '{' or '}';

    /// <summary>True where the character at an offset is white space or the text has ended: what must follow an indicator.</summary>
    public static bool SpaceAt(string text, int at, int end) => at >= end || IsSpace(text[at]);

    public static bool IsDash(string text, int at, int end) => at < end && text[at] == '-' && SpaceAt(text, at + 1, end);

    /// <summary>A line of three dashes or dots, which ends a document.</summary>
    public static bool IsMarker(string text, int lineStart, int end) =>
        lineStart + 3 <= end && text[lineStart] is '-' or '.' && text[lineStart + 1] == text[lineStart] && text[lineStart + 2] == text[lineStart]
        && SpaceAt(text, lineStart + 3, end);

    public static int SkipBlanks(string text, int at, int end)
    {
        while (at < end && IsBlank(text[at])) at++;
        return at;
    }

    /// <summary>Skips white space, line ends and comments.</summary>
    public static int SkipSpace(string text, int at, int end)
    {
        while (at < end)
        {
            if (IsSpace(text[at])) at++;
            else if (text[at] == '#' && (at == 0 || IsSpace(text[at - 1]))) at = LineEnd(text, at, end);
            else break;
        }

        return at;
    }

    public static int LineEnd(string text, int at, int end)
    {
        var found = text.AsSpan(at, end - at).IndexOfAny('\n', '\r');
        return found < 0 ? end : at + found;
    }

    /// <summary>The first offset of the line after the break at an offset.</summary>
    public static int AfterBreak(string text, int at, int end) =>
        at + 1 < end && text[at] == '\r' && text[at + 1] == '\n' ? at + 2 : at + 1;

    public static int TrimEnd(string text, int start, int end)
    {
        while (end > start && IsSpace(text[end - 1])) end--;
        return end;
    }

    public static bool HasBreak(string text, int start, int end) => text.AsSpan(start, end - start).IndexOfAny('\n', '\r') >= 0;

    /// <summary>The end of the text that starts at an offset and runs to its line's end or to a comment, trimmed.</summary>
    public static int ContentEnd(string text, int at, int lineEnd)
    {
        for (var i = at; i < lineEnd; i++)
        {
            if (text[i] == '#' && i > at && IsBlank(text[i - 1])) return TrimEnd(text, at, i);
        }

        return TrimEnd(text, at, lineEnd);
    }

    /// <summary>The colon that makes the text at an offset a key, on the same line; -1 where it is none.</summary>
    public static int KeyColon(string text, int at, int end)
    {
        if (at >= end) return -1;
        var first = text[at];
        if (first is '"' or '\'')
        {
            var close = QuoteEnd(text, at, end);
            if (close < 0) return -1;
            var colon = SkipBlanks(text, close, end);
            return colon < end && text[colon] == ':' && SpaceAt(text, colon + 1, end) ? colon : -1;
        }

        if (first is '[' or ']' or '{' or '}' or ',' or '#' or '|' or '>' or '@' or '`' or '%' or '&' or '*' or '!') return -1;
        if (first is '-' or '?' or ':' && SpaceAt(text, at + 1, end)) return -1;
        for (var i = at; i < end; i++)
        {
            var c = text[i];
            if (IsBreak(c)) return -1;
            if (c == ':' && SpaceAt(text, i + 1, end)) return i;
            if (c == '#' && i > at && IsBlank(text[i - 1])) return -1;
        }

        return -1;
    }

    /// <summary>The offset behind the closing quote of the text quoted at an offset, within a range; -1 where it is not closed.</summary>
    public static int QuoteEnd(string text, int at, int end)
    {
        var quote = text[at];
        for (var i = at + 1; i < end; i++)
        {
            var c = text[i];
            if (c == '\\' && quote == '"') i++;
            else if (c == quote)
            {
                if (quote == '"' || i + 1 >= end || text[i + 1] != '\'') return i + 1;
                i++;
            }
        }

        return -1;
    }

    /// <summary>The offset behind the <c>|</c> or <c>&gt;</c> of a text block and the marks that follow it.</summary>
    public static int SkipBlockHeader(string text, int at, int end)
    {
        at++;
        while (at < end && text[at] is '+' or '-' or >= '1' and <= '9') at++;
        return at;
    }

    /// <summary>
    /// How far the damage of an unclosed quote inside a flow collection reaches on its own line: to the next
    /// <c>, key:</c>, or to the brackets and commas that end the line.
    /// </summary>
    public static int UnclosedQuoteEnd(string text, int at, int lineEnd)
    {
        for (var i = at + 1; i < lineEnd; i++)
        {
            if (text[i] != ',' || !SpaceAt(text, i + 1, lineEnd)) continue;
            var key = SkipBlanks(text, i + 1, lineEnd);
            var word = key;
            while (word < lineEnd && (char.IsAsciiLetterOrDigit(text[word]) || text[word] is '-' or '_' or '<' or '.')) word++;
            if (word > key && word < lineEnd && text[word] == ':' && SpaceAt(text, word + 1, lineEnd)) return TrimEnd(text, at, i);
        }

        var last = ContentEnd(text, at, lineEnd);
        while (last > at + 1 && (text[last - 1] is ',' or ']' or '}' || IsBlank(text[last - 1]))) last--;
        return last;
    }

    /// <summary>What is no text but stands as a key, as a scalar of its own characters; line ends become one LF, as in any value.</summary>
    public static ScalarNode RawKey(string text, TextSpan span)
    {
        var raw = text.Substring(span.Start, span.Length);
        var value = raw.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        return new ScalarNode(span, value, ScalarStyle.Plain, span, HasBreak(text, span.Start, span.End));
    }

    /// <summary>The anchor and tag that stand before a node.</summary>
    /// <param name="at">Where to begin; afterwards behind the last property, or unchanged where there is none.</param>
    /// <param name="sameLine">True to look no further than the line.</param>
    public static Properties ReadProperties(string text, ref int at, int end, bool sameLine)
    {
        string? anchor = null, tag = null;
        int start = -1, behind = at;
        var i = at;
        while (true)
        {
            i = sameLine ? SkipBlanks(text, i, end) : SkipSpace(text, i, end);
            if (i >= end || text[i] is not ('&' or '!')) break;
            var stop = i + 1;
            var verbatim = text[i] == '!' && stop < end && text[stop] == '<';
            while (stop < end && !IsSpace(text[stop]) && (verbatim || !IsFlowMark(text[stop])))
            {
                if (verbatim && text[stop] == '>') verbatim = false;
                stop++;
            }

            if (text[i] == '&')
            {
                if (anchor != null || stop == i + 1) break;
                anchor = text[(i + 1)..stop];
            }
            else
            {
                if (tag != null) break;
                tag = text[i..stop];
            }

            if (start < 0) start = i;
            i = behind = stop;
        }

        if (start >= 0) at = behind;
        return new Properties(anchor, tag, start, behind);
    }
}

/// <summary>Anchor and tag as written, and where they stand; <see cref="Start"/> is -1 where there is neither.</summary>
internal readonly record struct Properties(string? Anchor, string? Tag, int Start, int End)
{
    public static Properties None => new(null, null, -1, -1);

    public bool Any => Start >= 0;

    public int StartOr(int other) => Any ? Start : other;
}
