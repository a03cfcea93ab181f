using FluentAssertions;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>What the tests of the reader share.</summary>
internal static class Reading
{
    public static SyntaxTree Of(string text) => YamlReader.Read(new SourceText("a.technique.yaml", text));

    public static SyntaxTree Of(string text, YamlReader.Way way) => YamlReader.Read(new SourceText("a.technique.yaml", text), way);

    /// <summary>Reads a text that must be sound.</summary>
    public static SyntaxTree Sound(string text)
    {
        var tree = Of(text);
        TreeDump.Problems(tree).Should().BeEmpty();
        return tree;
    }

    public static string Slice(this SyntaxTree tree, TextSpan span) => tree.Source.Slice(span).ToString();

    public static string Slice(this SyntaxTree tree, Node node) => tree.Slice(node.Span);

    /// <summary>The node at a path of keys and indexes.</summary>
    public static Node At(this SyntaxTree tree, params object[] path)
    {
        var node = tree.Root!;
        foreach (var step in path)
        {
            node = step is int index ? ((SequenceNode)node).Items[index] : ((MappingNode)node).Entries.First(e => e.Key.Value == (string)step).Value;
        }

        return node;
    }

    /// <summary>Every node of a tree with its parent's span, keys included; aliases are not followed.</summary>
    public static IEnumerable<(Node Node, TextSpan Parent)> All(SyntaxTree tree)
    {
        var open = new Stack<(Node, TextSpan)>();
        if (tree.Root is not null) open.Push((tree.Root, new TextSpan(0, tree.Source.Text.Length)));
        while (open.TryPop(out var next))
        {
            yield return next;
            if (next.Item1 is MappingNode mapping)
            {
                foreach (var entry in mapping.Entries)
                {
                    open.Push((entry.Key, entry.Span));
                    open.Push((entry.Value, entry.Span));
                }
            }
            else if (next.Item1 is SequenceNode sequence)
            {
                foreach (var item in sequence.Items) open.Push((item, sequence.Span));
            }
        }
    }

    /// <summary>What must hold of every tree, whatever its text: the first thing that does not, or null.</summary>
    public static string? Flaw(SyntaxTree tree)
    {
        var whole = new TextSpan(0, tree.Source.Text.Length);
        foreach (var (node, parent) in All(tree))
        {
            if (node.Span.Length < 0 || !parent.Contains(node.Span)) return $"{node.GetType().Name} {node.Span} outside {parent}";
            if (node is ScalarNode scalar && (!node.Span.Contains(scalar.ContentSpan) || scalar.ContentSpan.Length < 0)) return $"content {scalar.ContentSpan} outside {node.Span}";
            var at = node.Span.Start;
            foreach (var span in node is MappingNode mapping ? mapping.Entries.Select(e => e.Span) : node is SequenceNode sequence ? sequence.Items.Select(i => i.Span) : [])
            {
                if (span.Start < at || span.Length < 0) return $"child {span} begins before {at}";
                if (!node.Span.Contains(span)) return $"child {span} outside {node.Span}";
                at = span.End;
            }

            if (node is MappingNode { Entries: var entries } && entries.FirstOrDefault(e => e.Key.Span.End > e.Value.Span.Start) is { } crossed)
            {
                return $"key {crossed.Key.Span} runs into value {crossed.Value.Span}";
            }
        }

        foreach (var problem in tree.Problems)
        {
            if (problem.Span.Length < 0 || !whole.Contains(problem.Span)) return $"problem {problem} outside the text";
            if (problem.Argument(0).Contains("(Line:", StringComparison.Ordinal)) return $"the parser's own words in {problem}";
        }

        return tree.Comments.Any(c => !whole.Contains(c.Span)) ? "a comment outside the text" : null;
    }
}
