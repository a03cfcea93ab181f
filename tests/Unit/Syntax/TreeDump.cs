using System.Globalization;
using System.Text;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>A tree as text, one node a line, so that two can be compared and a difference be seen.</summary>
internal static class TreeDump
{
    /// <param name="withSpans">False to leave out offsets: for texts that differ only in their line ends.</param>
    public static string Of(SyntaxTree tree, bool withSpans = true)
    {
        var lines = new StringBuilder();
        Write(lines, tree.Root, 0, "", withSpans);
        foreach (var comment in tree.Comments) lines.Append(CultureInfo.InvariantCulture, $"# {Place(comment.Span, withSpans)}\n");
        return lines.ToString();
    }

    public static string Problems(SyntaxTree tree) =>
        string.Join("\n", tree.Problems.Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{p.Code} {p.Span.Start}..{p.Span.End} [{Visible(tree.Source.Slice(p.Span).ToString())}] {p.Argument(0)}")));

    private static void Write(StringBuilder lines, Node? node, int depth, string label, bool withSpans)
    {
        lines.Append(' ', depth * 2).Append(label);
        switch (node)
        {
            case null:
                lines.Append("nothing\n");
                break;
            case ScalarNode scalar:
                lines.Append(CultureInfo.InvariantCulture,
                    $"{scalar.Style} [{Visible(scalar.Value)}] {Place(scalar.Span, withSpans)} {Place(scalar.ContentSpan, withSpans)}{(scalar.SpansLines ? " lines" : "")}{Properties(node)}\n");
                break;
            case AliasNode alias:
                lines.Append(CultureInfo.InvariantCulture, $"alias {alias.Name} {Place(alias.Span, withSpans)} -> {alias.Target?.Span.Start >= 0}\n");
                break;
            case ErrorNode:
                lines.Append(CultureInfo.InvariantCulture, $"error {Place(node.Span, withSpans)}\n");
                break;
            case MappingNode mapping:
                lines.Append(CultureInfo.InvariantCulture, $"mapping{(mapping.IsFlow ? " flow" : "")} {Place(node.Span, withSpans)}{Properties(node)}\n");
                foreach (var entry in mapping.Entries)
                {
                    lines.Append(' ', depth * 2 + 2).Append(CultureInfo.InvariantCulture, $"entry {Place(entry.Span, withSpans)}{(entry.IsBroken ? " broken" : "")}\n");
                    Write(lines, entry.Key, depth + 2, "key ", withSpans);
                    Write(lines, entry.Value, depth + 2, "value ", withSpans);
                }

                break;
            case SequenceNode sequence:
                lines.Append(CultureInfo.InvariantCulture, $"sequence{(sequence.IsFlow ? " flow" : "")} {Place(node.Span, withSpans)}{Properties(node)}\n");
                foreach (var item in sequence.Items) Write(lines, item, depth + 1, "- ", withSpans);
                break;
        }
    }

    private static string Properties(Node node) => $"{(node.Anchor is null ? "" : " &" + node.Anchor)}{(node.Tag is null ? "" : " " + node.Tag)}";

    private static string Place(TextSpan span, bool withSpans) =>
        withSpans ? string.Create(CultureInfo.InvariantCulture, $"{span.Start}..{span.End}") : "";

    private static string Visible(string text) => text.Replace("\r", "\\r").Replace("\n", "\\n").Replace("\t", "\\t");
}
