namespace TechLint.Syntax;

internal enum LineKind
{
    /// <summary>Empty, or a comment only.</summary>
    Blank,

    /// <summary>Starts with a dash and a space.</summary>
    Dash,

    /// <summary>Starts with a key and its colon.</summary>
    Key,

    /// <summary>Starts with a question mark and a space: a key written out.</summary>
    Explicit,

    /// <summary>Starts with a colon and a space: the value of a key written out.</summary>
    ExplicitValue,

    /// <summary>Anything else.</summary>
    Text,

    /// <summary>Inside a quoted text, a text block or a flow collection that began on an earlier line.</summary>
    Continuation,
}

/// <summary>One line as the outline sees it.</summary>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset before its terminator.</param>
/// <param name="First">Offset of its first character that is not white space.</param>
/// <param name="Indent">The column it counts as standing in; for a line indented by a tab, a guess.</param>
/// <param name="Tab">Offset of a tab in its indentation; -1 where there is none.</param>
/// <param name="HasKey">True when it holds a key, perhaps behind dashes.</param>
/// <param name="HasValue">True when a value begins on it, so that deeper keys below cannot belong to it.</param>
/// <param name="TokenEnd">Where the quoted text or flow collection that begins on it ends, at the latest.</param>
/// <param name="Owner">The column of the key or dash whose value begins on it; for a value on a line of its own, one less than its column.</param>
internal readonly record struct OutlineLine(int Start, int End, int First, int Indent, int Tab, LineKind Kind, bool HasKey, bool HasValue,
    int TokenEnd, int Owner);

/// <summary>
/// The lines of a stretch of text with what can be told of each without reading its neighbours' meaning. Everything that
/// recovers rests on it: an unclosed brace ends at the next line, indented no deeper than its owner, that looks like
/// <c>key:</c> or <c>- </c>; an unclosed quote ends on its own line. One pass; its work is linear.
/// </summary>
internal sealed class Outline
{
    private readonly string text;
    private readonly int end;
    private readonly OutlineLine[] lines;
    private long work;

    public Outline(string text, int start, int end)
    {
        this.text = text;
        this.end = end;
        // A quote that is never closed is looked for once; hostile text that makes it many is cut short here.
        work = 8L * (end - start) + 4096;
        lines = Read(start);
    }

    public ReadOnlySpan<OutlineLine> Lines => lines;

    private OutlineLine[] Read(int start)
    {
        var found = new List<OutlineLine>();
        var continuesTo = -1;
        var blockOwner = int.MinValue;
        for (var at = start; at < end || at == start;)
        {
            var stop = Lexical.LineEnd(text, at, end);
            var first = at;
            while (first < stop && text[first] == ' ') first++;
            var line = new OutlineLine(at, stop, first, first - at, -1, LineKind.Blank, false, false, -1, -1);
            var isEmpty = Lexical.SkipBlanks(text, first, stop) == stop;
            if (blockOwner > int.MinValue && (isEmpty || line.Indent > blockOwner))
            {
                line = line with { Kind = LineKind.Continuation };
            }
            else
            {
                blockOwner = int.MinValue;
                if (at < continuesTo) line = line with { Kind = LineKind.Continuation };
                else if (!isEmpty) line = ReadLine(line, found, ref blockOwner);
                if (line.TokenEnd > stop) continuesTo = line.TokenEnd;
            }

            found.Add(line);
            if (stop >= end) break;
            at = Lexical.AfterBreak(text, stop, end);
        }

        return [.. found];
    }

    private OutlineLine ReadLine(OutlineLine line, List<OutlineLine> before, ref int blockOwner)
    {
        if (text[line.First] == '\t') line = PlaceTabbed(line, before);
        if (text[line.First] == '#') return line;

        var kind = LineKind.Text;
        var hasKey = false;
        var at = line.First;
        var owner = line.Indent - 1;
        while (Lexical.IsDash(text, at, line.End))
        {
            if (at == line.First) kind = LineKind.Dash;
            owner = line.Indent + at - line.First;
            at = Lexical.SkipBlanks(text, at + 1, line.End);
        }

        if (at < line.End && text[at] is '?' or ':' && Lexical.SpaceAt(text, at + 1, line.End))
        {
            if (at == line.First) kind = text[at] == '?' ? LineKind.Explicit : LineKind.ExplicitValue;
            owner = line.Indent + at - line.First;
            at = Lexical.SkipBlanks(text, at + 1, line.End);
        }

        var key = at;
        Lexical.ReadProperties(text, ref key, line.End, sameLine: true);
        key = Lexical.SkipBlanks(text, key, line.End);
        var colon = Lexical.KeyColon(text, key, line.End);
        if (colon >= 0)
        {
            if (at == line.First) kind = LineKind.Key;
            hasKey = true;
            owner = line.Indent + at - line.First;
            at = colon + 1;
        }

        Lexical.ReadProperties(text, ref at, line.End, sameLine: true);
        at = Lexical.SkipBlanks(text, at, line.End);
        line = line with { Kind = kind, HasKey = hasKey, Owner = owner };
        if (at >= line.End || text[at] == '#') return line;
        switch (text[at])
        {
            case '|' or '>':
                blockOwner = owner;
                return line;
            case '"' or '\'':
                return line with { HasValue = true, TokenEnd = QuoteEnd(at, line.End, owner, isFlow: false) };
            case '{' or '[':
                return line with { HasValue = true, TokenEnd = FlowEnd(at, owner) };
            default:
                return line with { HasValue = true };
        }
    }

    /// <summary>
    /// A line indented by a tab counts as standing where the line above with the same white space stands; else below the
    /// line above where that awaits a value, and beside it where it does not.
    /// </summary>
    private OutlineLine PlaceTabbed(OutlineLine line, List<OutlineLine> before)
    {
        var first = Lexical.SkipBlanks(text, line.First, line.End);
        var tab = line.First;
        var indent = 0;
        for (var i = before.Count - 1; i >= 0; i--)
        {
            var above = before[i];
            if (above.Kind is LineKind.Blank or LineKind.Continuation) continue;
            var isSame = text.AsSpan(above.Start, above.First - above.Start).SequenceEqual(text.AsSpan(line.Start, first - line.Start));
            indent = isSame || above.HasValue ? above.Indent : above.Indent + 2;
            break;
        }

        return line with { First = first, Tab = tab, Indent = indent };
    }

    /// <summary>The offset behind a quoted text; -1 where it is not closed before a line that ends it.</summary>
    public int QuoteEnd(int at, int lineEnd, int owner, bool isFlow)
    {
        var close = Lexical.QuoteEnd(text, at, lineEnd);
        if (close >= 0) return close;
        var stop = StopOf(at, lineEnd, owner);
        if ((work -= stop - at) < 0) return -1;
        close = Lexical.QuoteEnd(text, at, stop);
        if (close < 0) return -1;

        // A quote that closes on a later line, with something unfit behind it, has met the opening of another.
        var next = Lexical.SkipBlanks(text, close, stop);
        if (next >= stop || Lexical.IsBreak(text[next]) || text[next] == '#') return close;
        return isFlow && text[next] is ',' or ']' or '}' or ':' ? close : -1;
    }

    /// <summary>The offset behind the bracket that closes a flow collection, or the place where its damage ends.</summary>
    private int FlowEnd(int at, int owner)
    {
        var open = 0;
        var isTokenStart = true;
        var lineEnd = Lexical.LineEnd(text, at, end);
        for (var i = at; i < end; i++)
        {
            var c = text[i];
            if (Lexical.IsBreak(c))
            {
                var next = Lexical.AfterBreak(text, i, end);
                if (EndsUnclosed(next, owner)) return Lexical.TrimEnd(text, at, i);
                lineEnd = Lexical.LineEnd(text, next, end);
                i = next - 1;
                isTokenStart = true;
            }
            else if (c is '{' or '[')
            {
                open++;
                isTokenStart = true;
            }
            else if (c is '}' or ']')
            {
                if (--open == 0) return i + 1;
            }
            else if (c is '"' or '\'' && isTokenStart)
            {
                var close = QuoteEnd(i, lineEnd, owner, isFlow: true);
                i = (close < 0 ? Lexical.UnclosedQuoteEnd(text, i, lineEnd) : close) - 1;
                if (i >= lineEnd) lineEnd = Lexical.LineEnd(text, i + 1, end);
                isTokenStart = false;
            }
            else if (c == '#' && Lexical.IsSpace(text[i - 1]))
            {
                i = lineEnd - 1;
            }
            else if (c is ',' or ':')
            {
                isTokenStart = true;
            }
            else if (!Lexical.IsBlank(c))
            {
                isTokenStart = false;
            }
        }

        return Lexical.TrimEnd(text, at, end);
    }

    private int StopOf(int at, int lineEnd, int owner)
    {
        while (lineEnd < end)
        {
            var next = Lexical.AfterBreak(text, lineEnd, end);
            if (next >= end || EndsUnclosed(next, owner)) break;
            if ((work -= 8) < 0) break;
            lineEnd = Lexical.LineEnd(text, next, end);
        }

        return Math.Max(at, lineEnd);
    }

    /// <summary>True for a line that ends what is unclosed above it.</summary>
    private bool EndsUnclosed(int lineStart, int owner)
    {
        if (lineStart >= end) return true;
        var stop = Lexical.LineEnd(text, lineStart, end);
        if (Lexical.IsMarker(text, lineStart, stop)) return true;
        var first = lineStart;
        while (first < stop && text[first] == ' ') first++;
        return first - lineStart <= owner && (Lexical.IsDash(text, first, stop) || Lexical.KeyColon(text, first, stop) >= 0);
    }
}
