namespace TechLint.Syntax.Formatting;

/// <summary>
/// Cuts a text into tokens along its tree: scalars are taken whole, and what stands in the gaps between them is indicators,
/// comments and white space. Each token learns where it belongs as the first of its line: lists and values two columns right of
/// their key, what goes on inside a bracket right behind it (or, where its first line holds nothing else, two columns right of the key).
/// </summary>
internal sealed class Tokens
{
    /// <summary>Columns of one level.</summary>
    public const int Step = 2;

    private readonly string text;
    private readonly List<Token> found = [];
    private int at;

    private Tokens(string text, int start)
    {
        this.text = text;
        at = start;
    }

    /// <summary>A column: so many right of a token's, or of the left margin.</summary>
    private readonly record struct Column(int Base, int Indent)
    {
        public static readonly Column Margin = new(-1, 0);

        public Column In(int columns) => this with { Indent = Indent + columns };
    }

    /// <summary>Null where the text holds something between its nodes that is no part of a sound document.</summary>
    public static List<Token>? Of(SyntaxTree tree)
    {
        var whole = tree.Source.Text;
        var tokens = new Tokens(whole, Spacing.Start(whole));
        if (tree.Root is { } root && !tokens.Visit(root, Column.Margin, Column.Margin, -1)) return null;
        return tokens.Gap(whole.Length, Column.Margin) ? tokens.found : null;
    }

    /// <param name="node">What to cut.</param>
    /// <param name="own">Where it belongs if it begins a line.</param>
    /// <param name="around">Where what closes it belongs, if that begins a line.</param>
    /// <param name="owner">The key or dash that it belongs to.</param>
    private bool Visit(Node node, Column own, Column around, int owner)
    {
        if (!Gap(node.Span.Start, own)) return false;
        switch (node)
        {
            case ScalarNode scalar:
                if (!Gap(scalar.ContentSpan.Start, own)) return false;
                if (scalar.ContentSpan.Length > 0)
                {
                    var isBlockText = scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded;
                    found.Add(new Token(TokenKind.Scalar, scalar.ContentSpan, own.Base, own.Indent, owner, isBlockText));
                }

                at = Math.Max(at, scalar.ContentSpan.End);
                return true;
            case AliasNode:
                found.Add(new Token(TokenKind.Alias, node.Span, own.Base, own.Indent));
                at = node.Span.End;
                return true;
            case MappingNode { IsFlow: true } mapping:
                return VisitFlow(mapping.Span, [.. mapping.Entries.Select(entry => entry.Span)], own, around, (index, place) => VisitEntry(mapping.Entries[index], place, owner, found.Count));
            case SequenceNode { IsFlow: true } sequence:
                return VisitFlow(sequence.Span, [.. sequence.Items.Select(item => item.Span)], own, around, (index, place) => Visit(sequence.Items[index], place, place, owner));
            case MappingNode mapping:
                return VisitBlock(mapping, own);
            case SequenceNode sequence:
                return VisitBlock(sequence, own);
            default:
                return false;
        }
    }

    private bool VisitBlock(MappingNode mapping, Column own)
    {
        var place = own;
        foreach (var entry in mapping.Entries)
        {
            var before = found.Count;
            if (entry.IsBroken || !Gap(entry.Span.Start, place)) return false;

            // A key may stand behind a question mark.
            var question = found.FindIndex(before, token => token.Kind == TokenKind.Question);
            var first = question < 0 ? found.Count : question;
            if (!VisitEntry(entry, question < 0 ? place : new Column(question, Step), first, first)) return false;
            if (first < found.Count) place = new Column(first, 0);
        }

        return true;
    }

    /// <param name="entry">The entry.</param>
    /// <param name="place">Where it belongs.</param>
    /// <param name="owner">What the further lines of its scalars move with: in a block the entry itself.</param>
    /// <param name="first">Its first token.</param>
    private bool VisitEntry(Entry entry, Column place, int owner, int first)
    {
        if (!Visit(entry.Key, place, place, owner)) return false;
        var key = first < found.Count ? new Column(first, 0) : place;
        return Gap(entry.Value.Span.Start, key) && Visit(entry.Value, key.In(Step), key, owner);
    }

    private bool VisitBlock(SequenceNode sequence, Column own)
    {
        var place = own;
        foreach (var item in sequence.Items)
        {
            if (!Gap(item.Span.Start, place)) return false;
            var dash = found.FindLastIndex(token => token.Kind == TokenKind.Dash);
            if (dash < 0) return false;
            place = new Column(dash, 0);
            if (!Visit(item, place.In(Step), place.In(Step), dash)) return false;
        }

        return true;
    }

    private bool VisitFlow(TextSpan span, TextSpan[] items, Column own, Column around, Func<int, Column, bool> visit)
    {
        // Anchor and tag come first; one pair inside a list ([a: b]) has no braces of its own.
        var open = at;
        while (open < span.End && text[open] is not ('{' or '[') && (items.Length == 0 || open < items[0].Start)) open++;
        var hasBrackets = open < span.End && text[open] is '{' or '[' && (items.Length == 0 || open < items[0].Start);
        if (!hasBrackets)
        {
            for (var index = 0; index < items.Length; index++)
            {
                if (!visit(index, own)) return false;
            }

            return true;
        }

        if (!Gap(open + 1, own)) return false;
        var bracket = found.Count - 1;
        var stays = items.Length > 0 && !Lexical.HasBreak(text, open, items[0].Start);
        var place = stays ? new Column(bracket, 1) : around.In(Step);
        for (var index = 0; index < items.Length; index++)
        {
            if (!Gap(items[index].Start, place) || !visit(index, place)) return false;
        }

        return Gap(span.End - 1, place) && Gap(span.End, stays ? new Column(bracket, 0) : around);
    }

    /// <summary>Takes all up to an offset that is no scalar.</summary>
    private bool Gap(int end, Column place)
    {
        while (at < end)
        {
            var c = text[at];
            if (Lexical.IsSpace(c))
            {
                at++;
                continue;
            }

            var stop = at + 1;
            TokenKind kind;
            switch (c)
            {
                case '#':
                    kind = TokenKind.Comment;
                    stop = Lexical.TrimEnd(text, at, Lexical.LineEnd(text, at, text.Length));
                    break;
                case '&' or '!':
                    kind = TokenKind.Property;
                    while (stop < end && !Lexical.IsSpace(text[stop])) stop++;
                    break;
                case '%' or '-' or '.' when BeginsLine(at) && (c == '%' || Lexical.IsMarker(text, at, text.Length)):
                    kind = TokenKind.Marker;
                    stop = c == '%' ? Lexical.TrimEnd(text, at, Lexical.LineEnd(text, at, text.Length)) : at + 3;
                    place = Column.Margin;
                    break;
                case '-':
                    kind = TokenKind.Dash;
                    break;
                case '?':
                    kind = TokenKind.Question;
                    break;
                case ':':
                    kind = TokenKind.Colon;
                    break;
                case ',':
                    kind = TokenKind.Comma;
                    break;
                case '{' or '[':
                    kind = TokenKind.Open;
                    break;
                case '}' or ']':
                    kind = TokenKind.Close;
                    break;
                default:
                    return false;
            }

            found.Add(new Token(kind, TextSpan.FromBounds(at, stop), place.Base, place.Indent));
            at = stop;
        }

        return true;
    }

    private bool BeginsLine(int offset) => offset == 0 || Lexical.IsBreak(text[offset - 1]) || text[offset - 1] == '\uFEFF';
}
