using System.Collections.Immutable;
using SharpYaml;
using SharpYaml.Events;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Model;

/// <summary>Texts for the shape tests.</summary>
internal static class ShapeText
{
    public static ShapeCheck Check(string text, FormatKind kind) => ShapeChecker.Check(Read(text), kind);

    public static SyntaxTree Read(string text)
    {
        var source = new SourceText("test.yaml", text);
        var parser = Parser.CreateParser(new StringReader(text));
        var anchors = new Dictionary<string, Node>(StringComparer.Ordinal);
        while (parser.MoveNext() && parser.Current is StreamStart or DocumentStart) { }
        if (parser.Current is StreamEnd) return new SyntaxTree(source, null, [], []);
        return new SyntaxTree(source, ReadNode(parser, anchors), [], []);
    }

    private static Node ReadNode(IParser parser, Dictionary<string, Node> anchors)
    {
        var start = parser.Current!.Start.Index;
        Node node;
        switch (parser.Current)
        {
            case AnchorAlias alias:
                node = new AliasNode(TextSpan.FromBounds(start, alias.End.Index), alias.Value, anchors.GetValueOrDefault(alias.Value));
                parser.MoveNext();
                return node;
            case Scalar scalar:
                var span = TextSpan.FromBounds(start, scalar.End.Index);
                node = new ScalarNode(span, scalar.Value, (TechLint.Syntax.ScalarStyle)Math.Max(0, (int)scalar.Style - 1), span,
                    scalar.Start.Line != scalar.End.Line, scalar.Anchor, scalar.Tag);
                parser.MoveNext();
                if (scalar.Anchor is not null) anchors[scalar.Anchor] = node;
                return node;
            case SequenceStart sequence:
                parser.MoveNext();
                var items = ImmutableArray.CreateBuilder<Node>();
                while (parser.Current is not SequenceEnd) items.Add(ReadNode(parser, anchors));
                node = new SequenceNode(TextSpan.FromBounds(start, parser.Current.End.Index), items.ToImmutable(), false);
                parser.MoveNext();
                if (sequence.Anchor is not null) anchors[sequence.Anchor] = node;
                return node;
            case MappingStart mapping:
                parser.MoveNext();
                var entries = ImmutableArray.CreateBuilder<Entry>();
                while (parser.Current is not MappingEnd)
                {
                    var key = (ScalarNode)ReadNode(parser, anchors);
                    var value = ReadNode(parser, anchors);
                    entries.Add(new Entry(key, value, TextSpan.FromBounds(key.Span.Start, value.Span.End)));
                }

                node = new MappingNode(TextSpan.FromBounds(start, parser.Current.End.Index), entries.ToImmutable(), false);
                parser.MoveNext();
                if (mapping.Anchor is not null) anchors[mapping.Anchor] = node;
                return node;
            default: throw new InvalidOperationException(parser.Current.ToString());
        }
    }
}
