using System.Text;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Syntax.Formatting;

namespace TechLint.Engine.Formatting;

/// <summary>
/// Puts the keys of a text in the canonical order, that of the schema. Comments right above a key, and what stands behind its value, go with
/// it; blank lines too. An unknown key stays behind the one that it followed. Lists keep their order. A group of keys is left as it
/// is where moving its keys could change or lose something: anchors and aliases, a key twice, comments inside braces.
/// </summary>
internal sealed class KeyOrder
{
    private readonly SyntaxTree tree;
    private readonly string text;
    private readonly string lineEnd;

    private KeyOrder(SyntaxTree tree)
    {
        this.tree = tree;
        text = tree.Source.Text;
        var first = text.AsSpan().IndexOfAny('\n', '\r');
        lineEnd = first < 0 ? "\n" : text[first] == '\r' && first + 1 < text.Length && text[first + 1] == '\n' ? "\r\n" : text[first].ToString();
    }

    /// <summary>The text with its keys in order; the text itself where they are, or where the result would not say the same.</summary>
    public static string Apply(SyntaxTree tree, ObjectShape shape)
    {
        if (tree.Root is null || !Formatter.CanFormat(tree)) return tree.Source.Text;
        var order = new KeyOrder(tree);
        var whole = new TextSpan(0, tree.Source.Text.Length);
        var result = order.Written(whole, tree.Root, shape);
        return SameMeaning(tree, result) ? result : tree.Source.Text;
    }

    private static bool SameMeaning(SyntaxTree tree, string result) => Formatter.SaysTheSame(tree, YamlReader.Read(new SourceText(tree.Source.Path, result)));

    /// <summary>A stretch of the text, the node in it in order.</summary>
    private string Written(TextSpan span, Node node, ValueShape? shape)
    {
        switch (node)
        {
            case SequenceNode sequence:
                var item = (Fitting(shape, node) as ListShape)?.Item;
                return Replaced(span, sequence.Items.Select(one => (one.Span, Written(one.Span, one, item))));
            case MappingNode mapping:
                var own = Fitting(shape, node);
                if (own is ObjectShape keys && OrderOf(mapping, keys) is { } order)
                {
                    if (mapping.IsFlow) return WrittenFlow(span, mapping, keys, order);
                    if (BlocksOf(mapping) is { } blocks) return WrittenBlock(span, mapping, keys, order, blocks);
                }

                return Replaced(span, mapping.Entries.Select(entry => (entry.Value.Span, Written(entry.Value.Span, entry.Value, ShapeOf(own, entry)))));
            default:
                return text.Substring(span.Start, span.Length);
        }
    }

    private string Replaced(TextSpan span, IEnumerable<(TextSpan Span, string Text)> parts)
    {
        var result = new StringBuilder(span.Length);
        var at = span.Start;
        foreach (var (place, written) in parts)
        {
            result.Append(text, at, place.Start - at).Append(written);
            at = place.End;
        }

        return result.Append(text, at, span.End - at).ToString();
    }

    private string Written(Entry entry, ObjectShape keys) =>
        Replaced(entry.Span, [(entry.Value.Span, Written(entry.Value.Span, entry.Value, ShapeOf(keys, entry)))]);

    private string WrittenFlow(TextSpan span, MappingNode mapping, ObjectShape keys, int[] order)
    {
        var entries = mapping.Entries;
        return Replaced(span, entries.Select((entry, place) => (entry.Span, Written(entries[order[place]], keys))));
    }

    private string WrittenBlock(TextSpan span, MappingNode mapping, ObjectShape keys, int[] order, Block[] blocks)
    {
        var entries = mapping.Entries;
        var margin = new string(' ', tree.Source.Lines.Utf16Column(entries[0].Span.Start));
        var result = new StringBuilder(span.Length);
        result.Append(text, span.Start, entries[0].Span.Start - span.Start);
        for (var place = 0; place < order.Length; place++)
        {
            var index = order[place];
            var block = blocks[index];

            // The key that loses the first place takes the blank lines of the one that gains it.
            var blanks = index == 0 ? blocks[order[0]].Blanks : block.Blanks;
            for (var line = 0; place > 0 && line < blanks; line++) result.Append(lineEnd);
            if (place > 0) result.Append(margin);
            foreach (var comment in block.Above) result.Append(comment).Append(lineEnd).Append(margin);
            result.Append(Written(entries[index], keys)).Append(text, entries[index].Span.End, block.BodyEnd - entries[index].Span.End);
            foreach (var line in block.Below) result.Append(lineEnd).Append(line);
            if (place < order.Length - 1) result.Append(lineEnd);
        }

        return result.Append(text, blocks[^1].End, span.End - blocks[^1].End).ToString();
    }

    /// <param name="Above">Comments right above the key, level with it.</param>
    /// <param name="Blanks">Blank lines before those.</param>
    /// <param name="BodyEnd">End of the entry's last line.</param>
    /// <param name="Below">Whole lines behind it that belong to it.</param>
    /// <param name="End">End of all that.</param>
    private sealed record Block(IReadOnlyList<string> Above, int Blanks, int BodyEnd, IReadOnlyList<string> Below, int End);

    /// <summary>Null where the lines cannot be told apart by key.</summary>
    private Block[]? BlocksOf(MappingNode mapping)
    {
        var lines = tree.Source.Lines;
        var column = lines.Utf16Column(mapping.Entries[0].Span.Start);
        var beginsLine = text.AsSpan(lines.StartOf(lines.LineOf(mapping.Entries[0].Span.Start)), column).Trim(" \uFEFF").IsEmpty;
        var blocks = new Block[mapping.Entries.Length];
        IReadOnlyList<string> above = [];
        var blanks = 0;
        for (var index = 0; index < blocks.Length; index++)
        {
            var span = mapping.Entries[index].Span;
            var last = lines.LineOf(span.End);
            if (index > 0 && lines.Utf16Column(span.Start) != column) return null;
            var next = index + 1 < blocks.Length ? lines.LineOf(mapping.Entries[index + 1].Span.Start) : last + 1;
            if (next <= last) return null;
            var between = Enumerable.Range(last + 1, next - last - 1).Select(line => text[lines.StartOf(line)..lines.EndOf(line)]).ToList();
            var (own, gap, nextAbove) = Split(between, column);
            blocks[index] = new Block(above, blanks, lines.EndOf(last), own, own.Count > 0 ? lines.EndOf(last + own.Count) : lines.EndOf(last));
            (above, blanks) = (nextAbove, gap);
        }

        // Behind a dash there is no line for comments of its own; and a deeper comment after the last key may be that key's.
        if (!beginsLine && blocks.Any(block => block.Above.Count > 0)) return null;
        var behind = lines.LineOf(mapping.Entries[^1].Span.End) + 1;
        if (behind < lines.LineCount && IsComment(text[lines.StartOf(behind)..lines.EndOf(behind)], out var at) && at >= column && column > 0) return null;
        return blocks;
    }

    /// <summary>Lines between two keys: those of the first, the number of blank ones, and comments of the second.</summary>
    private static (List<string> Own, int Blanks, List<string> Above) Split(List<string> lines, int column)
    {
        var from = lines.Count;
        while (from > 0 && IsComment(lines[from - 1], out var at) && at == column) from--;
        var blank = from;
        while (blank > 0 && string.IsNullOrWhiteSpace(lines[blank - 1])) blank--;
        return (lines[..blank], from - blank, [.. lines[from..].Select(line => line.Trim(' '))]);
    }

    private static bool IsComment(string line, out int column)
    {
        column = line.Length - line.TrimStart(' ').Length;
        return column < line.Length && line[column] == '#';
    }

    /// <summary>Which entry comes where; null where they may not be moved, or need not.</summary>
    private int[]? OrderOf(MappingNode mapping, ObjectShape keys)
    {
        var entries = mapping.Entries;
        if (entries.Length < 2 || entries.Any(entry => entry.IsBroken || entry.IsMerge)) return null;
        if (entries.Select(entry => entry.Key.Value).Distinct(StringComparer.Ordinal).Count() < entries.Length) return null;
        var ranks = new int[entries.Length];
        for (var index = 0; index < entries.Length; index++)
        {
            var known = keys.Keys.IndexOf(keys.Find(entries[index].Key.Value)!);
            ranks[index] = known >= 0 ? known : index > 0 ? ranks[index - 1] : -1;
        }

        int[] order = [.. Enumerable.Range(0, entries.Length).OrderBy(index => ranks[index])];
        if (order.SequenceEqual(Enumerable.Range(0, entries.Length))) return null;
        if (HoldsAnchors(mapping)) return null;
        return mapping.IsFlow && tree.Comments.Any(comment => mapping.Span.Contains(comment.Span)) ? null : order;
    }

    private static bool HoldsAnchors(Node node) => node.Anchor is not null || node switch
    {
        AliasNode => true,
        MappingNode mapping => mapping.Entries.Any(entry => HoldsAnchors(entry.Key) || HoldsAnchors(entry.Value)),
        SequenceNode sequence => sequence.Items.Any(HoldsAnchors),
        _ => false,
    };

    private static ValueShape? ShapeOf(ValueShape? owner, Entry entry) => owner switch
    {
        ObjectShape shape => shape.Find(entry.Key.Value)?.Value,
        MapShape map => map.Value,
        _ => null,
    };

    /// <summary>Of several shapes the one that what stands there can have.</summary>
    private static ValueShape? Fitting(ValueShape? shape, Node node) => shape is AnyOfShape any
        ? any.Alternatives.Select(alternative => Fitting(alternative, node)).FirstOrDefault(
            alternative => node is MappingNode ? alternative is ObjectShape or MapShape : alternative is ListShape)
        : shape;
}
