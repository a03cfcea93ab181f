using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>
/// Reads one flow collection, <c>{…}</c> or <c>[…]</c>, and goes on past what is broken in it: a missing comma, bracket,
/// quote or value costs that place only. Sound text gives the tree that the parser of the whole file gives.
/// </summary>
internal sealed class FlowReader(RecoveringReader host, string text, Outline outline, int limit, int owner)
{
    private int at;
    // One missing mark leaves everything around it open: it is told once.
    private bool saidUnclosed;

    /// <summary>Reads the collection whose bracket stands at an offset.</summary>
    /// <returns>The node; its span's end is where reading stopped.</returns>
    public Node Read(int open, Properties properties, int depth)
    {
        at = open;
        return ReadCollection(properties, depth);
    }

    private Node ReadCollection(Properties properties, int depth)
    {
        var open = at;
        if (depth >= ReadingLimits.Depth) return TooDeep(open);
        var isMapping = text[open] == '{';
        var entries = isMapping ? ImmutableArray.CreateBuilder<Entry>() : null;
        var items = isMapping ? null : ImmutableArray.CreateBuilder<Node>();
        var behind = ++at;
        var needsComma = false;
        while (true)
        {
            at = Lexical.SkipSpace(text, at, limit);
            if (at >= limit)
            {
                if (!saidUnclosed) host.Report(open, open + 1, isMapping ? Sentences.UnclosedBrace : Sentences.UnclosedBracket);
                saidUnclosed = true;
                break;
            }

            var c = text[at];
            if (c is '}' or ']')
            {
                if (c == '}' != isMapping) host.Report(at, at + 1, isMapping ? Sentences.BracketClosesBrace : Sentences.BraceClosesBracket);
                behind = ++at;
                break;
            }

            if (c == ',')
            {
                if (!needsComma) host.Report(at, at + 1, Sentences.NothingBeforeComma);
                needsComma = false;
                behind = ++at;
                continue;
            }

            if (needsComma && !ReportMissingComma(isMapping))
            {
                behind = Math.Max(behind, Lexical.TrimEnd(text, behind, at));
                continue;
            }

            if (!host.TakeNode()) { at = limit; break; }
            var start = at;
            if (isMapping)
            {
                var entry = ReadEntry(depth + 1);
                entries!.Add(entry);
                behind = Math.Max(behind, entry.Span.End);
            }
            else
            {
                var item = ReadItem(depth + 1);
                items!.Add(item);
                behind = Math.Max(behind, item.Span.End);
            }

            if (at == start) at++; // Whatever stands here: reading always goes on.
            needsComma = true;
        }

        var span = TextSpan.FromBounds(properties.StartOr(open), behind);
        return isMapping
            ? new MappingNode(span, entries!.ToImmutable(), isFlow: true, properties.Anchor, properties.Tag)
            : new SequenceNode(span, items!.ToImmutable(), isFlow: true, properties.Anchor, properties.Tag);
    }

    /// <returns>True where reading can go on with a further entry; false where text was skipped.</returns>
    private bool ReportMissingComma(bool isMapping)
    {
        var from = at;
        var lineEnd = Math.Min(limit, Lexical.LineEnd(text, at, limit));
        if (text[at] is '{' or '[' || (isMapping && IsKeyAhead(at, lineEnd)))
        {
            host.Report(from, Math.Max(from + 1, WordEnd(from)), Sentences.MissingComma);
            return true;
        }

        SkipToSeparator();
        if (at == from) at++;
        host.Report(from, Lexical.TrimEnd(text, from, at), Sentences.TextAfterValue);
        return false;
    }

    private Entry ReadEntry(int depth)
    {
        if (text[at] == '?' && Lexical.SpaceAt(text, at + 1, limit)) at = Lexical.SkipSpace(text, at + 1, limit);
        var start = at;
        ScalarNode key;
        var isQuoted = false;
        if (at < limit && text[at] == ':' && ColonAt(at))
        {
            key = Missing(at, Properties.None);
        }
        else
        {
            var node = ReadNode(depth, isKey: true, owner);
            isQuoted = node is ScalarNode { Style: not ScalarStyle.Plain } or SequenceNode or MappingNode;
            key = host.AsKey(node);
        }

        var behindKey = at;
        var colon = Lexical.SkipSpace(text, at, limit);
        if (colon >= limit || text[colon] != ':' || !(isQuoted || ColonAt(colon)))
        {
            at = behindKey;
            var none = Missing(key.Span.End, Properties.None);
            return new Entry(key, none, TextSpan.FromBounds(start, key.Span.End));
        }

        at = colon + 1;
        var value = ReadValue(depth, colon + 1);
        return new Entry(key, value, TextSpan.FromBounds(Math.Min(start, key.Span.Start), value.Span.End));
    }

    private Node ReadItem(int depth)
    {
        var start = at;
        Node node;
        var isQuoted = false;
        if (text[at] == ':' && ColonAt(at))
        {
            node = Missing(at, Properties.None);
        }
        else
        {
            node = ReadNode(depth, isKey: true, owner);
            isQuoted = node is ScalarNode { Style: not ScalarStyle.Plain } or SequenceNode or MappingNode;
        }

        var colon = Lexical.SkipBlanks(text, at, limit);
        if (colon >= limit || text[colon] != ':' || !(isQuoted || ColonAt(colon))) return node;

        // A pair in a list, [key: value], is a mapping of one entry.
        if (depth >= ReadingLimits.Depth) return TooDeep(start);
        var key = host.AsKey(node);
        at = colon + 1;
        var value = ReadValue(depth + 1, colon + 1);
        var span = TextSpan.FromBounds(key.Span.Start, value.Span.End);
        return new MappingNode(span, [new Entry(key, value, span)], isFlow: true);
    }

    private Node ReadValue(int depth, int missingAt)
    {
        var next = Lexical.SkipSpace(text, at, limit);
        if (next >= limit || text[next] is ',' or '}' or ']') return Missing(missingAt, Properties.None);
        at = next;
        return ReadNode(depth, isKey: false, owner);
    }

    private Node ReadNode(int depth, bool isKey, int ownerIndent)
    {
        var properties = Lexical.ReadProperties(text, ref at, limit, sameLine: false);
        var start = properties.Any ? Lexical.SkipSpace(text, at, limit) : at;
        if (start >= limit || text[start] is ',' or '}' or ']' || (properties.Any && text[start] == ':' && ColonAt(start)))
        {
            return Missing(properties.Any ? properties.End : start, properties);
        }

        at = start;
        switch (text[at])
        {
            case '{' or '[':
                return ReadCollection(properties, depth);
            case '"' or '\'':
                return ReadQuoted(properties, ownerIndent);
            case '*':
                return ReadAlias();
            case '@' or '`' or '%' or '|' or '>' or '&' or '!' or '#':
                return Broken(start, Sentences.ReservedStart);
            case '-' or '?' or ':' when Lexical.SpaceAt(text, at + 1, limit):
                return Broken(start, text[at] == '-' ? Sentences.ListOnKeyLine : Sentences.ReservedStart);
            default:
                return ReadPlain(properties, isKey);
        }
    }

    private Node ReadQuoted(Properties properties, int ownerIndent)
    {
        var start = at;
        var lineEnd = Lexical.LineEnd(text, start, limit);
        var close = outline.QuoteEnd(start, lineEnd, ownerIndent, isFlow: true);
        if (close < 0 || close > limit)
        {
            at = Lexical.UnclosedQuoteEnd(text, start, lineEnd);
            saidUnclosed = true;
            host.Report(start, at, Sentences.UnclosedQuote);
            return new ErrorNode(TextSpan.FromBounds(start, at));
        }

        at = close;
        return host.Quoted(start, close, properties);
    }

    private AliasNode ReadAlias()
    {
        var start = at++;
        while (at < limit && !Lexical.IsSpace(text[at]) && !Lexical.IsFlowMark(text[at])) at++;
        return new AliasNode(TextSpan.FromBounds(start, at), text[(start + 1)..at], null);
    }

    private Node ReadPlain(Properties properties, bool isKey)
    {
        var start = at;
        var stop = PlainEnd(start, isKey);
        if (!isKey && stop < limit && text[stop] == ':')
        {
            // A value cannot hold a colon: either the comma before the last word is missing, or the colon is too many.
            var word = Lexical.TrimEnd(text, start, stop);
            while (word > start && !Lexical.IsSpace(text[word - 1])) word--;
            if (word == start)
            {
                host.Report(stop, stop + 1, Sentences.SecondColon);
                SkipToSeparator();
                return new ErrorNode(TextSpan.FromBounds(start, Lexical.TrimEnd(text, start, at)));
            }

            stop = word; // The loop over the entries tells of the comma.
        }

        at = Lexical.TrimEnd(text, start, stop);
        return host.Plain(start, at, properties);
    }

    /// <summary>Where plain text ends: before a comma, bracket, comment or colon.</summary>
    private int PlainEnd(int start, bool isKey)
    {
        for (var i = start; i < limit; i++)
        {
            var c = text[i];
            if (Lexical.IsFlowMark(c)) return i;
            if (c == ':' && ColonAt(i)) return i;
            if (c == '#' && i > start && Lexical.IsSpace(text[i - 1])) return i;
            if (!Lexical.IsBreak(c) || !isKey) continue;
            var next = Lexical.SkipSpace(text, i, limit);
            if (IsKeyAhead(next, Lexical.LineEnd(text, next, limit))) return i;
        }

        return limit;
    }

    private bool IsKeyAhead(int from, int lineEnd)
    {
        if (from < lineEnd && text[from] is '"' or '\'') return Lexical.KeyColon(text, from, lineEnd) >= 0;
        for (var i = from; i < lineEnd; i++)
        {
            if (Lexical.IsFlowMark(text[i])) return false;
            if (text[i] == ':' && ColonAt(i)) return i > from;
        }

        return false;
    }

    private int WordEnd(int from)
    {
        var i = from;
        while (i < limit && !Lexical.IsSpace(text[i]) && !Lexical.IsFlowMark(text[i]) && text[i] != ':') i++;
        return i;
    }

    private bool ColonAt(int colon) => Lexical.SpaceAt(text, colon + 1, limit) || Lexical.IsFlowMark(text[colon + 1]);

    private ErrorNode Broken(int start, string sentence)
    {
        SkipToSeparator();
        if (at == start) at++;
        var end = Math.Max(start + 1, Lexical.TrimEnd(text, start, at));
        host.Report(start, end, sentence);
        return new ErrorNode(TextSpan.FromBounds(start, end));
    }

    private ErrorNode TooDeep(int open)
    {
        host.ReportTooDeep(new TextSpan(open, 1));
        saidUnclosed = true;
        at = open;
        var depth = 0;
        do
        {
            if (text[at] is '{' or '[') depth++;
            else if (text[at] is '}' or ']') depth--;
            at++;
        }
        while (at < limit && depth > 0);
        return new ErrorNode(TextSpan.FromBounds(open, Lexical.TrimEnd(text, open, at)));
    }

    /// <summary>Goes to the next comma or closing bracket that is not inside brackets of its own.</summary>
    private void SkipToSeparator()
    {
        var depth = 0;
        for (; at < limit; at++)
        {
            var c = text[at];
            if (c is '{' or '[') depth++;
            else if (c is '}' or ']' && --depth < 0) return;
            else if (c == ',' && depth == 0) return;
        }
    }

    private static ScalarNode Missing(int place, Properties properties) => RecoveringReader.Missing(place, properties);
}
