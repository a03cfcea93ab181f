using TechLint.Syntax;

namespace TechLint.Engine.Completing;

/// <summary>Which brackets are open at a place, told from the text: a tree of half-typed text may have closed them.</summary>
internal static class OpenBrackets
{
    /// <summary>The innermost open bracket, <c>{</c> or <c>[</c>; 0 where none is. A bracket ends, as in reading, at the next line, indented no
    /// deeper than its owner, that looks like a key or an entry.</summary>
    public static char At(SourceText source, int offset)
    {
        var open = new Stack<(char Bracket, int Indent)>();
        for (var line = 0; line < source.Lines.LineCount && source.Lines.StartOf(line) <= offset; line++)
        {
            var (start, end) = (source.Lines.StartOf(line), Math.Min(offset, source.Lines.EndOf(line)));
            if (end < start) break;
            var text = source.Text.AsSpan(start, end - start);
            var indent = text.Length - text.TrimStart(' ').Length;
            if (open.Count > 0 && indent <= open.Peek().Indent && LooksLikeBlock(text[indent..])) open.Clear();
            Scan(text, indent, open);
        }

        return open.Count > 0 ? open.Peek().Bracket : '\0';
    }

    private static void Scan(ReadOnlySpan<char> text, int indent, Stack<(char Bracket, int Indent)> open)
    {
        var quote = '\0';
        for (var i = 0; i < text.Length; i++)
        {
            var at = text[i];
            var startsWord = i == 0 || text[i - 1] is ' ' or '{' or '[' or ',' or ':';
            if (quote != '\0')
            {
                if (at == quote) quote = '\0';
            }
            else if (at is '"' or '\'' && startsWord)
            {
                quote = at;
            }
            else if (at == '#' && startsWord)
            {
                return;
            }
            else if (at is '{' or '[' && (open.Count > 0 || startsWord))
            {
                open.Push((at, indent));
            }
            else if (at is '}' or ']' && open.Count > 0)
            {
                open.Pop();
            }
        }
    }

    private static bool LooksLikeBlock(ReadOnlySpan<char> text)
    {
        if (text.StartsWith("- ")) return true;
        var colon = text.IndexOf(':');
        return colon > 0 && text[..colon].IndexOfAny('{', '}', ',') < 0 && (colon + 1 == text.Length || text[colon + 1] == ' ');
    }
}
