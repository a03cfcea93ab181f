using System.Collections.Immutable;
using System.Runtime.InteropServices;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace TechLint.Syntax;

internal enum Outcome { Read, Failed, TooDeep, TooMany }

/// <param name="Outcome">Whether the text was read; the tree is whole only for <see cref="Outcome.Read"/>.</param>
/// <param name="Root">Null for a text without content.</param>
/// <param name="Nodes">How many nodes were made.</param>
/// <param name="FailedAt">The offset at which reading stopped.</param>
/// <param name="NextDocument">The offset of a second document; -1 where there is none.</param>
internal readonly record struct EventReading(Outcome Outcome, Node? Root, int Nodes, int FailedAt, int NextDocument);

/// <summary>
/// Builds the tree of a stretch of text from the events of one YAML parser, in one pass. It knows no recovery: the first
/// error ends it. Marks of the parser that do not say what a span needs (ends of collections, places of missing values)
/// are put right from the text itself.
/// </summary>
internal sealed class EventReader
{
    private readonly string text;
    private readonly int shift;
    private readonly int end;
    private readonly List<Problem> problems;
    private readonly Frame[] stack;
    private int depth;
    private int nodes;
    private int cursor;
    private Node? root;

    private EventReader(string text, int start, int end, int column, int depthLeft, List<Problem> problems)
    {
        this.text = text;
        this.end = end;
        this.problems = problems;
        shift = start - column;
        cursor = start;
        stack = new Frame[Math.Max(depthLeft, 0)];
    }

    /// <param name="text">The whole text.</param>
    /// <param name="start">Where the stretch begins, and</param>
    /// <param name="end">where it ends.</param>
    /// <param name="column">The column of its first character: it need not begin a line.</param>
    /// <param name="depthLeft">How many collections may stand inside one another.</param>
    /// <param name="nodesLeft">How many nodes may be made.</param>
    /// <param name="problems">Takes what is wrong without being an error of the parser.</param>
    public static EventReading Read(string text, int start, int end, int column, int depthLeft, int nodesLeft, List<Problem> problems)
    {
        var reader = new EventReader(text, start, end, column, depthLeft, problems);
        var scanner = new Scanner(new StretchReader(text, start, end, column), skipComments: true);
        try
        {
            return reader.Run(new Parser(scanner), nodesLeft);
        }
        catch (YamlException failure)
        {
            return reader.Fail(failure.Start.Index);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // The parser also throws InvalidOperationException and the like, without a place.
            return reader.Fail(scanner.CurrentPosition.Index);
        }
    }

    private EventReading Fail(long index) => new(Outcome.Failed, null, nodes, Math.Clamp(At(index), 0, end), -1);

    private EventReading Run(Parser parser, int nodesLeft)
    {
        var documents = 0;
        while (parser.MoveNext())
        {
            var current = parser.Current!;
            switch (current)
            {
                case DocumentStart:
                    if (++documents > 1) return new EventReading(Outcome.Read, root, nodes, -1, At(current.Start.Index));
                    break;
                case Scalar scalar:
                    Add(Read(scalar));
                    break;
                case YamlDotNet.Core.Events.AnchorAlias alias:
                    Add(Read(alias));
                    break;
                case MappingStart mapping:
                    if (depth == stack.Length) return new EventReading(Outcome.TooDeep, null, nodes, At(current.Start.Index), -1);
                    Open(mapping, true, mapping.Style == MappingStyle.Flow);
                    break;
                case SequenceStart sequence:
                    if (depth == stack.Length) return new EventReading(Outcome.TooDeep, null, nodes, At(current.Start.Index), -1);
                    Open(sequence, false, sequence.Style == SequenceStyle.Flow);
                    break;
                case MappingEnd or SequenceEnd:
                    Close(At(current.Start.Index));
                    break;
            }

            if (nodes > nodesLeft)
            {
                while (depth > 0) Close(-1);
                return new EventReading(Outcome.TooMany, root, nodes, cursor, -1);
            }
        }

        return new EventReading(Outcome.Read, root, nodes, -1, -1);
    }

    private int At(long index) => (int)index + shift;

    private ScalarNode Read(Scalar scalar)
    {
        var start = Math.Max(At(scalar.Start.Index), cursor);
        var stop = Math.Clamp(At(scalar.End.Index), start, end);
        var properties = Properties.None;
        var content = start;
        if (!scalar.Anchor.IsEmpty || !scalar.Tag.IsEmpty)
        {
            properties = Lexical.ReadProperties(text, ref content, stop, sameLine: false);
            content = Lexical.SkipSpace(text, content, stop);
        }

        var style = scalar.Style switch
        {
            YamlDotNet.Core.ScalarStyle.SingleQuoted => ScalarStyle.SingleQuoted,
            YamlDotNet.Core.ScalarStyle.DoubleQuoted => ScalarStyle.DoubleQuoted,
            YamlDotNet.Core.ScalarStyle.Literal => ScalarStyle.Literal,
            YamlDotNet.Core.ScalarStyle.Folded => ScalarStyle.Folded,
            _ => ScalarStyle.Plain,
        };
        if (style == ScalarStyle.Plain && scalar.Value.Length == 0)
        {
            var place = properties.Any ? properties.End : PlaceOfMissing(start);
            var missing = new TextSpan(place, 0);
            return new ScalarNode(TextSpan.FromBounds(properties.StartOr(place), place), "", style, missing, false, properties.Anchor, properties.Tag);
        }

        stop = Lexical.TrimEnd(text, content, stop);
        if (style is ScalarStyle.Literal or ScalarStyle.Folded && !Lexical.HasBreak(text, content, stop))
        {
            // A header without text: a comment behind it is none of its characters.
            stop = Lexical.SkipBlockHeader(text, content, stop);
        }

        return new ScalarNode(TextSpan.FromBounds(start, stop), scalar.Value, style, TextSpan.FromBounds(content, stop),
            Lexical.HasBreak(text, content, stop), properties.Anchor, properties.Tag);
    }

    /// <summary>A value left out stands right behind its colon, or behind its key where there is no colon.</summary>
    private int PlaceOfMissing(int mark)
    {
        if (depth == 0 || !stack[depth - 1].IsMapping) return mark;
        ref var frame = ref stack[depth - 1];
        if (frame.Key is not { } key) return PlaceOfMissingKey(mark);
        var behind = key.Span.End;
        if (frame.IsFlow && key is { Style: ScalarStyle.Plain } && key.Value.EndsWith(':'))
        {
            // The parser counts the colon of {key:} to the key; YAML 1.2 (7.3.3) does not.
            frame.Key = new ScalarNode(key.Span with { Length = key.Span.Length - 1 }, key.Value[..^1], ScalarStyle.Plain,
                key.ContentSpan with { Length = key.ContentSpan.Length - 1 }, key.SpansLines, key.Anchor, key.Tag);
            return behind;
        }

        var colon = Lexical.SkipBlanks(text, behind, end);
        if (colon < end && text[colon] == ':') return colon + 1;
        colon = Lexical.SkipSpace(text, behind, end);
        return colon < end && text[colon] == ':' && Lexical.SpaceAt(text, colon + 1, end) ? colon + 1 : behind;
    }

    /// <summary>A key left out stands at its colon.</summary>
    private int PlaceOfMissingKey(int mark)
    {
        var colon = Lexical.SkipSpace(text, mark, end);
        if (colon < end && text[colon] == ',') colon = Lexical.SkipSpace(text, colon + 1, end);
        return colon < end && text[colon] == ':' ? colon : mark;
    }

    private AliasNode Read(YamlDotNet.Core.Events.AnchorAlias alias)
    {
        var start = At(alias.Start.Index);
        return new AliasNode(TextSpan.FromBounds(start, Math.Clamp(At(alias.End.Index), start, end)), alias.Value.Value, null);
    }

    private void Open(NodeEvent opening, bool isMapping, bool isFlow)
    {
        nodes++;
        var start = At(opening.Start.Index);
        var properties = Properties.None;
        if (!opening.Anchor.IsEmpty || !opening.Tag.IsEmpty)
        {
            var at = start;
            properties = Lexical.ReadProperties(text, ref at, end, sameLine: false);
            // What the parser did not count to the collection belongs to its first key.
            if (opening.Anchor.IsEmpty) properties = properties with { Anchor = null };
            if (opening.Tag.IsEmpty) properties = properties with { Tag = null };
        }
        else if (isFlow && (start < cursor || start >= end || text[start] is not ('{' or '[')))
        {
            start = -1; // A single pair in a list, [a: b], has no bracket of its own.
        }

        cursor = Math.Max(cursor, start);
        ref var frame = ref stack[depth++];
        frame = new Frame(isMapping, isFlow, start, properties);
    }

    private void Close(int mark)
    {
        ref var frame = ref stack[--depth];
        if (frame.Key is not null)
        {
            // Only where reading was cut short: the key keeps an empty value.
            var place = new TextSpan(frame.Key.Span.End, 0);
            frame.Entries!.Add(new Entry(frame.Key, new ScalarNode(place, "", ScalarStyle.Plain, place, false), frame.Key.Span));
        }

        var start = frame.Start >= 0 ? frame.Start : frame.FirstStart(cursor);
        var isBracketed = frame.IsFlow && frame.Start >= 0 && mark >= cursor && mark < end && text[mark] is '}' or ']';
        if (isBracketed) cursor = mark + 1;
        var span = TextSpan.FromBounds(start, Math.Max(cursor, start));
        Node node = frame.IsMapping
            ? new MappingNode(span, Seal(frame.Entries), frame.IsFlow, frame.Properties.Anchor, frame.Properties.Tag)
            : new SequenceNode(span, Seal(frame.Items), frame.IsFlow, frame.Properties.Anchor, frame.Properties.Tag);
        frame = default;
        Place(node);
    }

    private void Add(Node leaf)
    {
        nodes++;
        cursor = Math.Max(cursor, leaf.Span.End);
        Place(leaf);
    }

    private void Place(Node node)
    {
        if (depth == 0)
        {
            root ??= node is ScalarNode { IsMissing: true, Anchor: null, Tag: null } ? null : node;
            return;
        }

        ref var frame = ref stack[depth - 1];
        if (!frame.IsMapping)
        {
            frame.Items!.Add(node);
        }
        else if (frame.Key is null)
        {
            frame.Key = AsKey(node);
        }
        else
        {
            frame.Entries!.Add(new Entry(frame.Key, node, TextSpan.FromBounds(frame.Key.Span.Start, node.Span.End)));
            frame.Key = null;
        }
    }

    private ScalarNode AsKey(Node node)
    {
        if (node is ScalarNode scalar) return scalar;
        problems.Add(Sentences.Syntax(node.Span.Start, node.Span.End, Sentences.KeyNotText));
        return Lexical.RawKey(text, node.Span);
    }

    private static ImmutableArray<T> Seal<T>(List<T>? list) =>
        list is null or [] ? [] : ImmutableCollectionsMarshal.AsImmutableArray(list.ToArray());

    /// <summary>A collection that is still open.</summary>
    private struct Frame(bool isMapping, bool isFlow, int start, Properties properties)
    {
        public readonly bool IsMapping = isMapping;
        public readonly bool IsFlow = isFlow;
        public readonly int Start = start;
        public readonly Properties Properties = properties;
        public readonly List<Entry>? Entries = isMapping ? [] : null;
        public readonly List<Node>? Items = isMapping ? null : [];
        public ScalarNode? Key = null;

        public readonly int FirstStart(int otherwise) =>
            Entries is { Count: > 0 } ? Entries[0].Span.Start : Items is { Count: > 0 } ? Items[0].Span.Start : otherwise;
    }
}
