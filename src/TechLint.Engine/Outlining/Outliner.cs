using System.Collections.Immutable;
using TechLint.Engine.Navigating;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine.Outlining;

/// <summary>The build of a text: outline, parts to fold, growing selections, kinds of words.</summary>
public static class Outliner
{
    private const int Deepest = 4;

    public static ImmutableArray<OutlineItem> Outline(SyntaxTree tree) =>
        tree.Root is MappingNode root ? Of(root, FormatKinds.Of(tree.Source.Path) is { } kind ? FormatShapes.Of(kind) : null, 0) : [];

    /// <summary>First and last line of each part of more than one line, in order.</summary>
    public static ImmutableArray<(int First, int Last, bool IsComment)> Folds(SyntaxTree tree)
    {
        var folds = new SortedSet<(int, int, bool)>();
        var lines = tree.Source.Lines;
        if (tree.Root is not null) Fold(tree.Root);
        for (var i = 0; i < tree.Comments.Length;)
        {
            var first = lines.LineOf(tree.Comments[i].Span.Start);
            var last = first;
            while (++i < tree.Comments.Length && lines.LineOf(tree.Comments[i].Span.Start) == last + 1) last++;
            if (last > first) folds.Add((first, last, true));
        }

        return [.. folds];

        void Fold(Node node)
        {
            if (node is MappingNode mapping)
            {
                foreach (var entry in mapping.Entries)
                {
                    if (entry.Value is not ScalarNode) Add(entry.Span);
                    Fold(entry.Value);
                }
            }
            else if (node is SequenceNode sequence)
            {
                foreach (var item in sequence.Items)
                {
                    Add(item.Span);
                    Fold(item);
                }
            }
        }

        void Add(TextSpan span)
        {
            var (first, last) = (lines.LineOf(span.Start), lines.LineOf(span.End));
            if (last > first) folds.Add((first, last, false));
        }
    }

    /// <summary>What a selection at a place grows to, innermost first; the last is the whole text.</summary>
    public static ImmutableArray<TextSpan> Selections(SyntaxTree tree, int offset)
    {
        var spans = new List<TextSpan> { new(0, tree.Source.Text.Length) };
        foreach (var step in tree.PathTo(offset))
        {
            if (step.Entry is { } entry) Add(entry.Span);
            Add(step.Node.Span);
            if (step.Node is ScalarNode scalar) Add(scalar.ContentSpan);
        }

        spans.Reverse();
        var lines = tree.Source.Lines;
        var (start, end) = (lines.StartOf(lines.LineOf(offset)), lines.EndOf(lines.LineOf(offset)));
        var text = tree.Source.Text.AsSpan(start..end);
        var line = new TextSpan(end - text.TrimStart(" \uFEFF").Length, text.Trim(" \uFEFF").Length);

        // The line has its place where it holds what is smaller and lies in what is larger.
        var place = spans.FindIndex(span => span.Contains(line));
        if (place >= 0 && line.Length > 0 && line.Touches(offset) && spans[place] != line && (place == 0 || line.Contains(spans[place - 1]))) spans.Insert(place, line);
        return [.. spans];

        void Add(TextSpan span)
        {
            if (span != spans[^1] && spans[^1].Contains(span) && span.Touches(offset)) spans.Add(span);
        }
    }

    /// <summary>In order, none over another, none over the end of a line.</summary>
    public static ImmutableArray<TextToken> Tokens(SyntaxTree tree)
    {
        var tokens = new List<TextToken>();
        var names = NameIndex.Of(tree).Uses.Where(use => use.Kind is not NameKind.Rule).ToLookup(use => use.Span.Start);
        var shape = FormatKinds.Of(tree.Source.Path) is { } kind ? FormatShapes.Of(kind) : null;
        if (tree.Root is not null) Walk(tree.Root, shape);
        foreach (var comment in tree.Comments) tokens.Add(new TextToken(comment.Span, TokenKind.Comment, false));
        var lines = tree.Source.Lines;
        var result = ImmutableArray.CreateBuilder<TextToken>();
        var end = 0;
        foreach (var token in tokens.OrderBy(token => token.Span))
        {
            for (var line = lines.LineOf(token.Span.Start); line <= lines.LineOf(Math.Max(token.Span.Start, token.Span.End - 1)); line++)
            {
                var (from, to) = (Math.Max(Math.Max(token.Span.Start, lines.StartOf(line)), end), Math.Min(token.Span.End, lines.EndOf(line)));
                if (to <= from) continue;
                result.Add(token with { Span = TextSpan.FromBounds(from, to) });
                end = to;
            }
        }

        return result.ToImmutable();

        void Walk(Node node, ValueShape? expected)
        {
            switch (node)
            {
                case MappingNode mapping:
                    foreach (var entry in mapping.Entries)
                    {
                        if (entry.IsBroken) continue;
                        var map = ShapeWalk.Alternatives(expected).OfType<MapShape>().FirstOrDefault();
                        var key = ShapeWalk.Alternatives(expected).OfType<ObjectShape>().Select(group => group.Find(entry.Key.Value)).FirstOrDefault(found => found is not null);
                        tokens.Add(new TextToken(entry.Key.Span, map is not null && key is null ? TokenKind.Rule : TokenKind.Key, false));
                        Walk(entry.Value, key?.Value ?? map?.Value);
                    }

                    break;
                case SequenceNode sequence:
                    foreach (var item in sequence.Items) Walk(item, ShapeWalk.Alternatives(expected).OfType<ListShape>().FirstOrDefault()?.Item);
                    break;
                case ScalarNode { IsMissing: false } scalar:
                    tokens.Add(Scalar(scalar, expected));
                    break;
            }
        }

        TextToken Scalar(ScalarNode scalar, ValueShape? expected)
        {
            var name = names[scalar.ContentSpan.Start].Concat(names[scalar.ContentSpan.Start + 1]).FirstOrDefault(use => scalar.ContentSpan.Contains(use.Span));
            if (name is not null && name.Kind is not NameKind.LibraryPath) return new TextToken(scalar.ContentSpan, TokenKind.Name, name.IsDefinition);
            var shapes = ShapeWalk.Alternatives(expected);
            var kindOf = shapes.Any(one => one is EnumShape words && words.Values.Contains(scalar.Value, StringComparer.Ordinal)) || shapes.Any(one => one is BooleanShape) ? TokenKind.Word
                : QuantityParser.Parse(scalar.Value) is not null || shapes.Any(one => one is IntegerShape or DateShape) ? TokenKind.Number
                : TokenKind.Text;
            return new TextToken(scalar.ContentSpan, kindOf, false);
        }
    }

    private static ImmutableArray<OutlineItem> Of(MappingNode mapping, ValueShape? shape, int depth)
    {
        var items = ImmutableArray.CreateBuilder<OutlineItem>();
        foreach (var entry in mapping.Entries)
        {
            if (entry.IsBroken || entry.Key.Value.Length == 0 || entry.Key.Span.Length == 0) continue;
            var key = ShapeWalk.Alternatives(shape).OfType<ObjectShape>().Select(group => group.Find(entry.Key.Value)).FirstOrDefault(found => found is not null);
            var (kind, children) = Below(entry.Value, key?.Value, depth);
            items.Add(new OutlineItem(key?.Title ?? entry.Key.Value, Detail(entry.Value), kind, entry.Span, entry.Key.Span, children));
        }

        return items.ToImmutable();
    }

    private static (OutlineKind Kind, ImmutableArray<OutlineItem> Children) Below(Node node, ValueShape? shape, int depth)
    {
        if (node is SequenceNode sequence)
        {
            var item = ShapeWalk.Alternatives(shape).OfType<ListShape>().FirstOrDefault()?.Item;
            return (OutlineKind.List, depth >= Deepest ? [] : [.. sequence.Items.OfType<MappingNode>().Select(one => Item(one, item, depth + 1))]);
        }

        return node is MappingNode mapping ? (OutlineKind.Group, depth >= Deepest ? [] : Of(mapping, shape, depth + 1)) : (OutlineKind.Value, []);
    }

    private static OutlineItem Item(MappingNode mapping, ValueShape? shape, int depth)
    {
        var name = (mapping.Find("id") ?? mapping.Find("station") ?? mapping.Find("rule"))?.Value as ScalarNode;
        var own = name is { IsMissing: false } && mapping.Span.Contains(name.Span) ? name : null;
        return new OutlineItem(own?.Value ?? shape?.Title ?? "entry", own is null ? "" : shape?.Title ?? "", OutlineKind.Item, mapping.Span, own?.Span ?? mapping.Span, Of(mapping, shape, depth));
    }

    private static string Detail(Node node) => node is ScalarNode { SpansLines: false } scalar && scalar.Value.Length <= 80 ? scalar.Value : "";
}
