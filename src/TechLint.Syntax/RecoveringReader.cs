using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>
/// Reads a text that no parser reads as a whole. The outline splits it at its keys and dashes, each part is read by itself,
/// and what lies below it is split in turn: a broken line costs that line. A part in which something is wrong is shown to
/// the parser, which has the last word on it. Sound text gives the same tree as one pass of the parser does. The work is
/// linear in the text for each level of nesting, and the levels are few.
/// </summary>
internal sealed class RecoveringReader
{
    private readonly string text;
    private readonly int end;
    private readonly List<Problem> problems;
    private readonly bool isUnaided;
    private readonly Outline outline;
    private long parserWork;
    private int nodesLeft = ReadingLimits.Nodes;
    private bool saidTooMany;
    private int upheld;

    /// <param name="isUnaided">True never to ask the parser about a part: for tests, which hold the ways of reading against
    /// each other.</param>
    public RecoveringReader(string text, int start, int end, List<Problem> problems, bool isUnaided = false)
    {
        this.text = text;
        this.end = end;
        this.problems = problems;
        this.isUnaided = isUnaided;
        outline = new Outline(text, start, end);
        parserWork = 40L * (end - start) + 65_536;
    }

    private bool IsStopped => nodesLeft <= 0 || problems.Count >= ReadingLimits.Problems;

    /// <param name="start">Where the root's text begins; it may stand behind <c>---</c> on the first line.</param>
    public Node? ReadRoot(int start)
    {
        var lines = outline.Lines;
        if (lines.Length == 0) return null;
        if (start > lines[0].Start)
        {
            var rest = Lexical.SkipBlanks(text, start, lines[0].End);
            if (rest < lines[0].End && text[rest] != '#') return ReadValue(start, 0, lines.Length, -1, start, 0, mayHoldKeys: false);
        }

        var first = NextContent(start > lines[0].Start ? 1 : 0, lines.Length);
        return first < 0 ? null : ReadOwnLine(first, lines.Length, -1, Properties.None, 0);
    }

    public void Report(int from, int to, string sentence)
    {
        if (problems.Count < ReadingLimits.Problems) problems.Add(Sentences.Syntax(from, to, sentence));
    }

    public void ReportTooDeep(TextSpan span)
    {
        if (problems.Count < ReadingLimits.Problems) problems.Add(Sentences.TooDeep(span));
    }

    /// <summary>Counts a node; false when there may be no more.</summary>
    public bool TakeNode()
    {
        if (nodesLeft-- > 0) return true;
        if (!saidTooMany) problems.Add(Sentences.TooMany(new TextSpan(end, 0)));
        saidTooMany = true;
        return false;
    }

    public static ScalarNode Missing(int place, Properties properties)
    {
        var content = new TextSpan(place, 0);
        var span = TextSpan.FromBounds(properties.StartOr(place), place);
        return new ScalarNode(span, "", ScalarStyle.Plain, content, false, properties.Anchor, properties.Tag);
    }

    public ScalarNode AsKey(Node node)
    {
        if (node is ScalarNode scalar) return scalar;
        if (node is not ErrorNode) Report(node.Span.Start, node.Span.End, Sentences.KeyNotText);
        return Lexical.RawKey(text, node.Span);
    }

    /// <summary>The plain text of a range, over one line or several.</summary>
    public Node Plain(int start, int stop, Properties properties)
    {
        var span = TextSpan.FromBounds(properties.StartOr(start), stop);
        var content = TextSpan.FromBounds(start, stop);
        if (!Lexical.HasBreak(text, start, stop))
        {
            return new ScalarNode(span, text[start..stop], ScalarStyle.Plain, content, false, properties.Anchor, properties.Tag);
        }

        // Folded by hand: line ends and the blanks around them become one space, an empty line a line end.
        var value = FoldPlain(start, stop);
        return new ScalarNode(span, value, ScalarStyle.Plain, content, true, properties.Anchor, properties.Tag);
    }

    private string FoldPlain(int start, int stop)
    {
        var folded = new System.Text.StringBuilder(stop - start);
        for (var at = start; ;)
        {
            var lineEnd = Lexical.LineEnd(text, at, stop);
            folded.Append(text, at, Lexical.TrimEnd(text, at, lineEnd) - at);
            if (lineEnd >= stop) return folded.ToString();
            var breaks = 0;
            at = lineEnd;
            while (at < stop && Lexical.IsSpace(text[at]))
            {
                if (Lexical.IsBreak(text[at]))
                {
                    breaks++;
                    at = Lexical.AfterBreak(text, at, stop);
                }
                else
                {
                    at++;
                }
            }

            if (breaks == 1) folded.Append(' ');
            else folded.Append('\n', breaks - 1);
        }
    }

    /// <summary>The quoted text of a range, quotes included.</summary>
    public Node Quoted(int start, int stop, Properties properties)
    {
        var content = TextSpan.FromBounds(start, stop);
        var span = TextSpan.FromBounds(properties.StartOr(start), stop);
        var style = text[start] == '"' ? ScalarStyle.DoubleQuoted : ScalarStyle.SingleQuoted;
        var spansLines = Lexical.HasBreak(text, start, stop);
        string? value;
        if (!spansLines && style == ScalarStyle.SingleQuoted)
        {
            value = text.Substring(start + 1, stop - start - 2).Replace("''", "'", StringComparison.Ordinal);
        }
        else if (!spansLines && text.AsSpan(start, stop - start).IndexOf('\\') < 0)
        {
            value = text.Substring(start + 1, stop - start - 2);
        }
        else
        {
            value = ScalarValue(start, stop, 0);
        }

        if (value is not null) return new ScalarNode(span, value, style, content, spansLines, properties.Anchor, properties.Tag);
        Report(start, stop, Sentences.BadEscape);
        return new ErrorNode(span);
    }

    /// <summary>What the parser makes of one scalar; null where it cannot read it.</summary>
    private string? ScalarValue(int start, int stop, int column)
    {
        var reading = Parse(start, stop, column, 0);
        return reading is { Outcome: Outcome.Read, Root: ScalarNode scalar } ? scalar.Value : null;
    }

    private EventReading Parse(int start, int stop, int column, int depth)
    {
        parserWork -= stop - start + 64;
        if (parserWork < 0) return default(EventReading) with { Outcome = Outcome.Failed };
        var said = problems.Count;
        var reading = EventReader.Read(text, start, stop, column, ReadingLimits.Depth - depth, nodesLeft, problems);
        if (reading is { Outcome: Outcome.Read, NextDocument: < 0 }) nodesLeft -= reading.Nodes;
        else problems.RemoveRange(said, problems.Count - said);
        return reading.NextDocument >= 0 ? reading with { Outcome = Outcome.Failed } : reading;
    }

    private int NextContent(int from, int last)
    {
        var lines = outline.Lines;
        for (var i = from; i < last; i++)
        {
            if (lines[i].Kind is not (LineKind.Blank or LineKind.Continuation)) return i;
        }

        return -1;
    }

    private int ColumnOf(int line, int at)
    {
        ref readonly var of = ref outline.Lines[line];
        return of.Indent + at - of.First;
    }

    /// <summary>The end of the text of some lines, without white space and comments behind it.</summary>
    private int ContentEnd(int start, int line, int last)
    {
        var lines = outline.Lines;
        for (var i = last - 1; i > line; i--)
        {
            if (lines[i].Kind == LineKind.Blank || lines[i].First >= lines[i].End) continue;
            return lines[i].Kind == LineKind.Continuation
                ? Lexical.TrimEnd(text, start, lines[i].End)
                : Lexical.ContentEnd(text, lines[i].First, lines[i].End);
        }

        return Lexical.ContentEnd(text, start, lines[line].End);
    }

    /// <summary>A node that begins on a line of its own.</summary>
    private Node ReadOwnLine(int line, int last, int owner, Properties properties, int depth)
    {
        ref readonly var first = ref outline.Lines[line];
        if (first.Kind == LineKind.Text)
        {
            // Anchor and tag may stand alone above the collection that they belong to.
            var at = first.First;
            var own = Lexical.ReadProperties(text, ref at, first.End, sameLine: true);
            at = Lexical.SkipBlanks(text, at, first.End);
            var isFurther = (own.Anchor is null || properties.Anchor is null) && (own.Tag is null || properties.Tag is null);
            if (own.Any && isFurther && (at >= first.End || text[at] == '#'))
            {
                if (properties.Any) own = new Properties(properties.Anchor ?? own.Anchor, properties.Tag ?? own.Tag, properties.Start, own.End);
                var next = NextContent(line + 1, last);
                return next < 0 ? Missing(own.End, own) : ReadOwnLine(next, last, owner, own, depth);
            }

            if (own.Any && isFurther && first.Tab < 0)
            {
                if (properties.Any) own = new Properties(properties.Anchor ?? own.Anchor, properties.Tag ?? own.Tag, properties.Start, own.End);
                return ReadInline(at, line, last, owner, own, depth);
            }
        }

        if (first.Tab >= 0) Report(first.Tab, first.Tab + 1, Sentences.TabIndent);
        return ReadBlock(first.First, line, last, owner, properties, depth);
    }

    /// <summary>A collection or scalar whose first character stands at an offset, where keys and dashes may begin.</summary>
    private Node ReadBlock(int at, int line, int last, int owner, Properties properties, int depth)
    {
        if (IsStopped) return GiveUp(at, line, last);
        var lines = outline.Lines;
        var column = ColumnOf(line, at);
        var lineEnd = lines[line].End;
        if (Lexical.IsDash(text, at, lineEnd)) return ReadSequence(at, line, last, column, properties, depth);
        if (IsKey(at, lineEnd)) return ReadMapping(at, line, last, column, properties, depth);

        // Text that is no key, above keys at the same column: a key that is still being typed.
        var mayBeTyped = lines[line].TokenEnd < 0 || at == lines[line].First;
        for (var i = line + 1; i < last && mayBeTyped; i++)
        {
            if (lines[i].Indent != column) continue;
            if (lines[i].Kind == LineKind.Key) return ReadMapping(at, line, last, column, properties, depth);
            if (lines[i].Kind == LineKind.Dash && !lines[line].HasKey && line != i && IsHalfTypedItem(at, line)) return ReadSequence(at, line, last, column, properties, depth);
        }

        return ReadInline(at, line, last, owner, properties, depth);
    }

    /// <summary>Text on a line of its own directly above dashes in the same column stands among list items.</summary>
    private bool IsHalfTypedItem(int at, int line) => at == outline.Lines[line].First && outline.Lines[line].Kind == LineKind.Text;

    private bool IsKey(int at, int lineEnd)
    {
        if (at < lineEnd && text[at] is '?' or ':' && Lexical.SpaceAt(text, at + 1, lineEnd)) return true;
        Lexical.ReadProperties(text, ref at, lineEnd, sameLine: true);
        return Lexical.KeyColon(text, Lexical.SkipBlanks(text, at, lineEnd), lineEnd) >= 0;
    }

    /// <summary>One of several lines that stand beside one another, with all that stands below it.</summary>
    private readonly record struct Part(int At, int Line, int Last, int Column, bool IsTooDeep, bool IsTooShallow, bool HasTab)
    {
        public bool IsOdd => IsTooDeep || IsTooShallow || HasTab;
    }

    private List<Part> Split(int at, int line, int last, int column, bool isSequence)
    {
        var lines = outline.Lines;
        var parts = new List<Part>();
        // The tab of a first line is told by whoever came to that line.
        var current = new Part(at, line, last, column, false, false, false);
        for (var i = line + 1; i < last; i++)
        {
            ref readonly var next = ref lines[i];
            if (next.Kind is LineKind.Blank or LineKind.Continuation) continue;
            ref readonly var head = ref lines[current.Line];
            if (next.Indent > current.Column)
            {
                // A key below a value that is already complete cannot belong to it.
                var isComplete = head.HasKey ? head.HasValue && !isSequence : head.TokenEnd >= 0;
                if (next.Kind != LineKind.Key || !isComplete) continue;
            }
            else if (!isSequence && next.Indent == current.Column)
            {
                // A list may stand in the column of its key.
                if (next.Kind == LineKind.Dash && head.HasKey && !head.HasValue) continue;
                if (next.Kind == LineKind.ExplicitValue && head.Kind is LineKind.Explicit) continue;
            }

            parts.Add(current with { Last = i });
            var isRun = current.IsOdd && current.Column == next.Indent;
            current = new Part(next.First, i, last, next.Indent, next.Indent > column && !isRun, next.Indent < column && !isRun, next.Tab >= 0);
        }

        parts.Add(current);
        return parts;
    }

    private MappingNode ReadMapping(int at, int line, int last, int column, Properties properties, int depth)
    {
        TakeNode();
        var parts = Split(at, line, last, column, isSequence: false);
        var entries = ImmutableArray.CreateBuilder<Entry>();
        if (depth >= ReadingLimits.Depth)
        {
            ReportTooDeep(new TextSpan(at, 1));
            entries.Add(BrokenEntry(at, line, last));
        }
        else
        {
            ReadEntries(parts, entries, depth + 1);
        }

        var span = TextSpan.FromBounds(properties.StartOr(Math.Min(at, entries[0].Span.Start)), entries[^1].Span.End);
        return new MappingNode(span, entries.ToImmutable(), isFlow: false, properties.Anchor, properties.Tag);
    }

    private SequenceNode ReadSequence(int at, int line, int last, int column, Properties properties, int depth)
    {
        TakeNode();
        var parts = Split(at, line, last, column, isSequence: true);
        var items = ImmutableArray.CreateBuilder<Node>();
        if (depth >= ReadingLimits.Depth)
        {
            ReportTooDeep(new TextSpan(at, 1));
            items.Add(new ErrorNode(TextSpan.FromBounds(at, ContentEnd(at, line, last))));
        }
        else
        {
            ReadItems(parts, items, depth + 1);
        }

        var span = TextSpan.FromBounds(properties.StartOr(at), Math.Max(items[^1].Span.End, at));
        return new SequenceNode(span, items.ToImmutable(), isFlow: false, properties.Anchor, properties.Tag);
    }

    private void ReadEntries(List<Part> parts, ImmutableArray<Entry>.Builder entries, int depth)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            if (IsStopped)
            {
                entries.Add(BrokenEntry(part.At, part.Line, parts[^1].Last));
                return;
            }

            ReportOdd(part);
            var before = problems.Count;
            var entry = ReadEntry(part, depth);
            if (Overrule(part, before, depth, isSequence: false) is MappingNode { Entries: [var read] }) entry = read;
            entries.Add(entry);
        }
    }

    private void ReadItems(List<Part> parts, ImmutableArray<Node>.Builder items, int depth)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            if (IsStopped)
            {
                items.Add(GiveUp(part.At, part.Line, parts[^1].Last));
                return;
            }

            ReportOdd(part);
            var before = problems.Count;
            var item = ReadItem(part, depth);
            if (Overrule(part, before, depth, isSequence: true) is SequenceNode { Items: [var read] }) item = read;
            items.Add(item);
        }
    }

    /// <summary>
    /// The parser's reading of a part in which something was found wrong: it knows corners of YAML that are not known here.
    /// Null where it finds fault too; what was found then stands, for this part and for all that hold it.
    /// </summary>
    private Node? Overrule(Part part, int before, int depth, bool isSequence)
    {
        if (isUnaided || problems.Count <= Math.Max(before, upheld) || problems.Count >= ReadingLimits.Problems) return null;
        var found = problems.GetRange(before, problems.Count - before);
        problems.RemoveRange(before, found.Count);
        var reading = Parse(part.At, outline.Lines[part.Last - 1].End, part.At - outline.Lines[part.Line].Start, depth - 1);
        var isWhole = isSequence
            ? reading.Root is SequenceNode { IsFlow: false, Anchor: null, Tag: null, Items.Length: 1 }
            : reading.Root is MappingNode { IsFlow: false, Anchor: null, Tag: null, Entries.Length: 1 };
        if (reading.Outcome == Outcome.Read && isWhole && reading.Root!.Span.Start == part.At) return reading.Root;
        problems.RemoveRange(before, problems.Count - before);
        problems.AddRange(found);
        upheld = problems.Count;
        return null;
    }

    private void ReportOdd(Part part)
    {
        ref readonly var line = ref outline.Lines[part.Line];
        if (part.HasTab) Report(line.Tab, line.Tab + 1, Sentences.TabIndent);
        else if (part.IsTooDeep) Report(part.At, Lexical.ContentEnd(text, part.At, line.End), Sentences.TooDeepIndent);
        else if (part.IsTooShallow) Report(part.At, Lexical.ContentEnd(text, part.At, line.End), Sentences.TooShallowIndent);
    }

    private Node ReadItem(Part part, int depth)
    {
        var lineEnd = outline.Lines[part.Line].End;
        if (Lexical.IsDash(text, part.At, lineEnd))
        {
            return ReadValue(part.At + 1, part.Line, part.Last, part.Column, part.At + 1, depth, mayHoldKeys: true);
        }

        if (!part.IsOdd) Report(part.At, Lexical.ContentEnd(text, part.At, lineEnd), Sentences.NoDash);
        return IsKey(part.At, lineEnd)
            ? ReadBlock(part.At, part.Line, part.Last, part.Column - 1, Properties.None, depth)
            : new ErrorNode(TextSpan.FromBounds(part.At, ContentEnd(part.At, part.Line, part.Last)));
    }

    private Entry ReadEntry(Part part, int depth)
    {
        ref readonly var line = ref outline.Lines[part.Line];
        var at = part.At;
        if (Lexical.IsDash(text, at, line.End))
        {
            if (!part.IsOdd) Report(at, at + 1, Sentences.DashAmongKeys);
            var item = ReadValue(at + 1, part.Line, part.Last, part.Column, at + 1, depth, mayHoldKeys: true);
            return new Entry(Missing(at, Properties.None), item, TextSpan.FromBounds(at, item.Span.End), isBroken: true);
        }

        if (at < line.End && text[at] is '?' or ':' && Lexical.SpaceAt(text, at + 1, line.End)) return ReadExplicit(part, depth);
        var keyStart = at;
        var properties = Lexical.ReadProperties(text, ref keyStart, line.End, sameLine: true);
        keyStart = Lexical.SkipBlanks(text, keyStart, line.End);
        var colon = Lexical.KeyColon(text, keyStart, line.End);
        if (colon < 0) return ReadWithoutColon(part, depth);

        TakeNode();
        var keyEnd = Lexical.TrimEnd(text, keyStart, colon);
        var key = text[keyStart] is '"' or '\'' ? Quoted(keyStart, keyEnd, properties) : Plain(keyStart, keyEnd, properties);
        var value = ReadValue(colon + 1, part.Line, part.Last, part.Column, colon + 1, depth, mayHoldKeys: false);
        return new Entry(AsKey(key), value, TextSpan.FromBounds(key.Span.Start, value.Span.End));
    }

    /// <summary>A key written out with a question mark, which only the parser knows to read; or a colon without a key.</summary>
    private Entry ReadExplicit(Part part, int depth)
    {
        var stop = ContentEnd(part.At, part.Line, part.Last);
        var reading = Parse(part.At, stop, part.At - outline.Lines[part.Line].Start, depth - 1);
        if (reading is { Outcome: Outcome.Read, Root: MappingNode { Entries: [var entry] } }) return entry;
        if (!part.IsOdd) Report(part.At, part.At + 1, text[part.At] == ':' ? Sentences.NoKey : Sentences.Unreadable);
        var value = ReadValue(part.At + 1, part.Line, part.Last, part.Column, part.At + 1, depth, mayHoldKeys: true);
        return new Entry(Missing(part.At, Properties.None), value, TextSpan.FromBounds(part.At, value.Span.End), isBroken: true);
    }

    /// <summary>
    /// A line among keys that is none. Its first word passes for the key, so that what asks for the key finds it broken and
    /// not missing; what stands below it keeps its nodes.
    /// </summary>
    private Entry ReadWithoutColon(Part part, int depth)
    {
        ref readonly var line = ref outline.Lines[part.Line];
        var at = part.At;
        var stop = Lexical.ContentEnd(text, at, line.End);
        if (text[at] is '{' or '[')
        {
            if (!part.IsOdd) Report(at, stop, Sentences.NoKeyBeforeValue);
            var flow = ReadInline(at, part.Line, part.Last, part.Column, Properties.None, depth);
            return new Entry(Missing(at, Properties.None), flow, TextSpan.FromBounds(at, flow.Span.End), isBroken: true);
        }

        var word = at;
        while (word < stop && !Lexical.IsSpace(text[word]) && text[word] != ':') word++;
        if (word == at) word = Math.Min(at + 1, stop);
        var hasColon = word < stop && text[word] == ':';
        if (!part.IsOdd) Report(at, stop, hasColon ? Sentences.NoSpaceAfterColon : Sentences.NoColon);
        var key = new ScalarNode(TextSpan.FromBounds(at, word), text[at..word], ScalarStyle.Plain, TextSpan.FromBounds(at, word), false);
        var below = NextContent(part.Line + 1, part.Last);
        if (below >= 0 && outline.Lines[below].Kind is LineKind.Key or LineKind.Dash)
        {
            var value = ReadOwnLine(below, part.Last, part.Column, Properties.None, depth);
            return new Entry(key, value, TextSpan.FromBounds(at, value.Span.End), isBroken: true);
        }

        var rest = Lexical.SkipBlanks(text, hasColon ? word + 1 : word, stop);
        var error = new ErrorNode(TextSpan.FromBounds(Math.Min(rest, stop), Math.Max(stop, ContentEnd(at, part.Line, part.Last))));
        return new Entry(key, error, TextSpan.FromBounds(at, error.Span.End), isBroken: true);
    }

    private Entry BrokenEntry(int at, int line, int last)
    {
        var error = GiveUp(at, line, last);
        return new Entry(Missing(at, Properties.None), error, error.Span, isBroken: true);
    }

    private ErrorNode GiveUp(int at, int line, int last) => new(TextSpan.FromBounds(at, Math.Max(at, ContentEnd(at, line, last))));

    /// <summary>What follows a colon or a dash.</summary>
    private Node ReadValue(int at, int line, int last, int owner, int missingAt, int depth, bool mayHoldKeys)
    {
        var lineEnd = outline.Lines[line].End;
        var content = Lexical.SkipBlanks(text, at, lineEnd);
        var isKey = mayHoldKeys && IsKey(content, lineEnd);
        var properties = isKey ? Properties.None : Lexical.ReadProperties(text, ref content, lineEnd, sameLine: true);
        content = Lexical.SkipBlanks(text, content, lineEnd);
        if (content < lineEnd && !(text[content] == '#' && Lexical.IsBlank(text[content - 1])))
        {
            return mayHoldKeys && !properties.Any
                ? ReadBlock(content, line, last, owner, properties, depth)
                : ReadInline(content, line, last, owner, properties, depth);
        }

        var next = NextContent(line + 1, last);
        if (next >= 0) return ReadOwnLine(next, last, owner, properties, depth);
        TakeNode();
        return Missing(properties.Any ? properties.End : missingAt, properties);
    }

    /// <summary>A value that is no block collection.</summary>
    private Node ReadInline(int at, int line, int last, int owner, Properties properties, int depth)
    {
        TakeNode();
        ref readonly var on = ref outline.Lines[line];
        var start = properties.StartOr(at);
        switch (text[at])
        {
            case '*':
                var stop = at + 1;
                while (stop < on.End && !Lexical.IsSpace(text[stop]) && !Lexical.IsFlowMark(text[stop])) stop++;
                ReportTrailing(stop, line, last);
                return new AliasNode(TextSpan.FromBounds(at, stop), text[(at + 1)..stop], null);
            case '{' or '[':
                var limit = on.TokenEnd > at ? on.TokenEnd : Lexical.TrimEnd(text, at, on.End);
                var flow = new FlowReader(this, text, outline, limit, on.Owner).Read(at, properties, depth);
                ReportTrailing(flow.Span.End, line, last);
                return flow;
            case '"' or '\'':
                if (on.TokenEnd > at)
                {
                    var quoted = Quoted(at, on.TokenEnd, properties);
                    ReportTrailing(on.TokenEnd, line, last);
                    return quoted;
                }

                Report(at, Lexical.TrimEnd(text, at, on.End), Sentences.UnclosedQuote);
                return new ErrorNode(TextSpan.FromBounds(start, ContentEnd(at, line, last)));
            case '|' or '>':
                return ReadTextBlock(at, line, last, owner, properties);
            case '-' or '?' or ':' when Lexical.SpaceAt(text, at + 1, on.End):
                return Broken(at, line, last, start, text[at] == '-' ? Sentences.ListOnKeyLine : Sentences.ReservedStart);
            case '@' or '`' or '%' or '&' or '!' or '}' or ']' or ',':
                return Broken(at, line, last, start, Sentences.ReservedStart);
            default:
                return ReadPlain(at, line, last, properties);
        }
    }

    private ErrorNode Broken(int at, int line, int last, int start, string sentence)
    {
        Report(at, Lexical.ContentEnd(text, at, outline.Lines[line].End), sentence);
        return new ErrorNode(TextSpan.FromBounds(start, ContentEnd(at, line, last)));
    }

    private Node ReadPlain(int at, int line, int last, Properties properties)
    {
        var lines = outline.Lines;
        var stop = Lexical.ContentEnd(text, at, lines[line].End);
        for (var i = at; i < stop; i++)
        {
            if (text[i] != ':' || !Lexical.SpaceAt(text, i + 1, stop)) continue;
            Report(i, i + 1, Sentences.SecondColon);
            return new ErrorNode(TextSpan.FromBounds(properties.StartOr(at), ContentEnd(at, line, last)));
        }

        // Deeper lines without a key go on with the text, until a comment ends it.
        var behind = line + 1;
        var isEnded = stop < Lexical.TrimEnd(text, at, lines[line].End);
        for (; behind < last && !isEnded; behind++)
        {
            ref readonly var next = ref lines[behind];
            if (next.First >= next.End || Lexical.SkipBlanks(text, next.First, next.End) == next.End) continue;
            if (next.Kind is LineKind.Blank or LineKind.Key || text[next.First] == '#') break;
            var nextStop = Lexical.ContentEnd(text, next.First, next.End);
            isEnded = nextStop < Lexical.TrimEnd(text, next.First, next.End);
            stop = nextStop;
        }

        var node = Plain(at, stop, properties);
        var rest = NextContent(behind, last);
        if (rest >= 0) ReportTrailing(lines[rest].First, rest, last);
        return node;
    }

    private Node ReadTextBlock(int at, int line, int last, int owner, Properties properties)
    {
        var lines = outline.Lines;
        var headEnd = lines[line].End;
        var i = Lexical.SkipBlockHeader(text, at, headEnd);
        var rest = Lexical.SkipBlanks(text, i, headEnd);
        if (i - at > 3 || (rest < headEnd && !(text[rest] == '#' && rest > i))) return Broken(at, line, last, properties.StartOr(at), Sentences.BadBlockHeader);

        var behind = line + 1;
        while (behind < last && lines[behind].Kind == LineKind.Continuation) behind++;
        var stop = lines[behind - 1].End;

        // The line ends behind the last line count (|+), and a digit counts from the owner's column: both are kept for the parser.
        var full = stop < end ? Lexical.AfterBreak(text, stop, end) : stop;
        var value = TextBlockValue(at, full, owner);
        var trimmed = behind == line + 1 ? i : Lexical.TrimEnd(text, at, stop);
        if (value is null)
        {
            Report(at, i, Sentences.BadBlockText);
            return new ErrorNode(TextSpan.FromBounds(properties.StartOr(at), trimmed));
        }

        if (behind < last) ReportTrailing(lines[behind].First, behind, last);
        var style = text[at] == '|' ? ScalarStyle.Literal : ScalarStyle.Folded;
        var content = TextSpan.FromBounds(at, trimmed);
        return new ScalarNode(TextSpan.FromBounds(properties.StartOr(at), trimmed), value, style, content,
            Lexical.HasBreak(text, at, trimmed), properties.Anchor, properties.Tag);
    }

    /// <summary>A text block's value, read as the item of a list in its owner's column.</summary>
    private string? TextBlockValue(int at, int stop, int owner)
    {
        if (owner < 0) return ScalarValue(at, stop, 0);
        parserWork -= stop - at + 64;
        if (parserWork < 0) return null;
        var alone = string.Concat(new string(' ', owner), "- ", text.AsSpan(at, stop - at));
        var reading = EventReader.Read(alone, 0, alone.Length, 0, 1, 8, []);
        return reading is { Outcome: Outcome.Read, Root: SequenceNode { Items: [ScalarNode scalar] } } ? scalar.Value : null;
    }

    /// <summary>Tells of text behind a value that is complete, on its line or below.</summary>
    private void ReportTrailing(int at, int line, int last)
    {
        var lines = outline.Lines;
        while (line + 1 < last && lines[line + 1].Start <= at) line++;
        var content = Lexical.SkipBlanks(text, at, lines[line].End);
        if (content >= lines[line].End || (text[content] == '#' && content > 0 && Lexical.IsSpace(text[content - 1])))
        {
            line = NextContent(line + 1, last);
            if (line < 0) return;
            content = lines[line].First;
        }

        Report(content, Math.Max(content + 1, Lexical.ContentEnd(text, content, lines[line].End)), Sentences.TextAfterValue);
    }
}
