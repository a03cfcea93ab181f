using System.Text;

namespace TechLint.Syntax.Formatting;

/// <summary>
/// The white space between the tokens of a text. One space after colons, commas and dashes, none inside brackets; levels of two
/// columns. Kept are blank lines between lines, line ends as they are, what a trailing comment stands away from its line, and the
/// spaces of a table: extra spaces whose text begins in the very column where text begins on a neighbouring line.
/// </summary>
internal sealed class Spacing
{
    private readonly string text;
    private readonly List<Token> tokens;
    private readonly LineMap lines;
    private readonly int[] oldColumns;
    private readonly int[] newColumns;
    private readonly Dictionary<int, List<int>> byLine = [];

    private Spacing(SourceText source, List<Token> tokens)
    {
        text = source.Text;
        lines = source.Lines;
        this.tokens = tokens;
        oldColumns = new int[tokens.Count];
        newColumns = new int[tokens.Count];
        for (var index = 0; index < tokens.Count; index++)
        {
            var start = tokens[index].Span.Start;
            oldColumns[index] = lines.Utf16Column(start);
            var line = lines.LineOf(start);
            if (!byLine.TryGetValue(line, out var members)) byLine.Add(line, members = []);
            members.Add(index);
        }
    }

    /// <summary>The white space before each token and, last, at the end; and each token's own text.</summary>
    public static (string[] Gaps, string[] Texts) Of(SourceText source, List<Token> tokens)
    {
        var spacing = new Spacing(source, tokens);
        var gaps = new string[tokens.Count + 1];
        var texts = new string[tokens.Count];
        for (var index = 0; index < tokens.Count; index++)
        {
            gaps[index] = spacing.GapBefore(index);
            texts[index] = spacing.TextOf(index);
        }

        gaps[^1] = spacing.End();
        return (gaps, texts);
    }

    /// <summary>As it stands before a token now.</summary>
    public static string OldGap(string text, List<Token> tokens, int index)
    {
        var start = index == 0 ? Start(text) : tokens[index - 1].Span.End;
        return text[start..(index == tokens.Count ? text.Length : tokens[index].Span.Start)];
    }

    public static int Start(string text) => text.Length > 0 && text[0] == '\uFEFF' ? 1 : 0;

    private string GapBefore(int index)
    {
        var gap = OldGap(text, tokens, index);
        if (index > 0 && !Lexical.HasBreak(gap, 0, gap.Length))
        {
            var inline = Inline(index, gap);
            newColumns[index] = EndColumn(index - 1) + inline.Length;
            return inline;
        }

        newColumns[index] = LineStart(index);

        // No blank lines before the first one.
        return (index == 0 ? "" : Breaks(gap, keepsBlanks: tokens[index - 1].IsBlockText)) + new string(' ', newColumns[index]);
    }

    private string Inline(int index, string gap)
    {
        var (before, token) = (tokens[index - 1], tokens[index]);
        switch (token.Kind)
        {
            case TokenKind.Comment:
                return gap;
            case TokenKind.Colon:
                return before.Kind == TokenKind.Scalar ? "" : gap;
            case TokenKind.Comma or TokenKind.Close:
                // A colon without a value before a mark of the list: together they might read as text.
                return before.Kind == TokenKind.Colon ? gap.Length > 0 ? " " : "" : "";
        }

        return before.Kind switch
        {
            TokenKind.Dash or TokenKind.Question or TokenKind.Marker or TokenKind.Property => " ",
            TokenKind.Open => "",
            TokenKind.Colon or TokenKind.Comma => gap.Length > 1 && IsAligned(index) ? new string(' ', gap.Length) : " ",
            _ => gap,
        };
    }

    /// <summary>The author lined it up with the line above or below.</summary>
    private bool IsAligned(int index)
    {
        var line = lines.LineOf(tokens[index].Span.Start);
        return IsIn(line - 1) || IsIn(line + 1);

        bool IsIn(int neighbour) => byLine.TryGetValue(neighbour, out var members) && members.Exists(
            other => oldColumns[other] == oldColumns[index] && other != members[0] && tokens[other - 1].Kind == tokens[index - 1].Kind);
    }

    private int LineStart(int index)
    {
        var token = tokens[index];

        // Text like a document's end is text only away from the margin.
        if (token.Kind == TokenKind.Scalar && Lexical.IsMarker(text, token.Span.Start, text.Length)) return Math.Max(1, ColumnOf(token));
        if (token.Kind != TokenKind.Comment) return ColumnOf(token);

        // A comment stays with the lines that it was level with: those that follow, else those before it.
        var next = index + 1;
        while (next < tokens.Count && tokens[next].Kind == TokenKind.Comment) next++;
        if (next < tokens.Count && oldColumns[next] == oldColumns[index]) return ColumnOf(tokens[next]);
        for (var earlier = index - 1; earlier >= 0; earlier--)
        {
            if (!BeginsLine(earlier) || tokens[earlier].Kind == TokenKind.Comment) continue;
            if (oldColumns[earlier] == oldColumns[index]) return newColumns[earlier];
            if (oldColumns[earlier] < oldColumns[index]) break;
        }

        return next < tokens.Count ? ColumnOf(tokens[next]) : 0;
    }

    private bool BeginsLine(int index) => byLine[lines.LineOf(tokens[index].Span.Start)][0] == index;

    private int ColumnOf(Token token) => (token.Base < 0 ? 0 : newColumns[token.Base]) + token.Indent;

    /// <summary>Further lines of a scalar move as far as the block that it belongs to.</summary>
    private string TextOf(int index)
    {
        var token = tokens[index];
        var own = text.Substring(token.Span.Start, token.Span.Length);
        var shift = Shift(token);
        if (shift == 0 || !Lexical.HasBreak(own, 0, own.Length)) return own;
        var result = new StringBuilder(own.Length + 64);
        var at = 0;
        while (true)
        {
            var end = Lexical.LineEnd(own, at, own.Length);
            var blanks = Lexical.SkipBlanks(own, at, end) - at;
            var isFirst = at == 0;
            if (isFirst || blanks == end - at) result.Append(own, at, end - at);
            else if (shift > 0) result.Append(' ', shift).Append(own, at, end - at);
            else result.Append(own, at + Math.Min(-shift, blanks), end - at - Math.Min(-shift, blanks));
            if (end == own.Length) return result.ToString();
            var next = Lexical.AfterBreak(own, end, own.Length);
            result.Append(own, end, next - end);
            at = next;
        }
    }

    private int Shift(Token token) => token.Kind == TokenKind.Scalar && token.Owner >= 0 ? newColumns[token.Owner] - oldColumns[token.Owner] : 0;

    private int EndColumn(int index)
    {
        var span = tokens[index].Span;
        var start = lines.StartOf(lines.LineOf(span.End));
        return start <= span.Start ? newColumns[index] + span.Length : span.End - start + Shift(tokens[index]);
    }

    private string End()
    {
        if (tokens.Count == 0) return "";
        var gap = OldGap(text, tokens, tokens.Count);

        // The line ends behind a text block may be part of it.
        if (tokens[^1].IsBlockText && gap.Length > 0) return gap;
        var breaks = Breaks(gap, keepsBlanks: false);
        return breaks.Length > 0 ? breaks[..Lexical.AfterBreak(breaks, 0, breaks.Length)] : LineEnd();
    }

    /// <summary>The file's own, by its first line.</summary>
    private string LineEnd()
    {
        var at = Lexical.LineEnd(text, 0, text.Length);
        return at < text.Length ? text[at..Lexical.AfterBreak(text, at, text.Length)] : "\n";
    }

    /// <summary>The line ends of a gap without the blanks about them.</summary>
    private static string Breaks(string gap, bool keepsBlanks)
    {
        if (keepsBlanks) return gap[..(gap.AsSpan().LastIndexOfAny('\n', '\r') + 1)];
        return gap.AsSpan().IndexOfAny(' ', '\t') < 0 ? gap : string.Concat(gap.Where(Lexical.IsBreak));
    }
}
