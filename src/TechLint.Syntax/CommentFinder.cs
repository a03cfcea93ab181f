using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>Finds the comments of a text in the gaps between the leaves of its tree, whichever way the tree was read.</summary>
internal sealed class CommentFinder(string text)
{
    private readonly ImmutableArray<Comment>.Builder found = ImmutableArray.CreateBuilder<Comment>();
    private int at;

    public static ImmutableArray<Comment> Find(string text, Node? root, int start, int end)
    {
        if (text.AsSpan(start, end - start).IndexOf('#') < 0) return [];
        var finder = new CommentFinder(text) { at = start };
        if (root is not null) finder.Visit(root);
        finder.ScanTo(end);
        return finder.found.ToImmutable();
    }

    private void Visit(Node node)
    {
        switch (node)
        {
            case MappingNode mapping:
                foreach (var entry in mapping.Entries)
                {
                    Visit(entry.Key);
                    Visit(entry.Value);
                }

                break;
            case SequenceNode sequence:
                foreach (var item in sequence.Items) Visit(item);
                break;
            case ScalarNode scalar:
                ScanTo(scalar.ContentSpan.Start);
                // The first line of a text block may end in a comment of its own.
                if (scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded) ScanTo(Lexical.LineEnd(text, scalar.ContentSpan.Start, text.Length));
                at = Math.Max(at, scalar.Span.End);
                break;
            default:
                ScanTo(node.Span.Start);
                at = Math.Max(at, node.Span.End);
                break;
        }
    }

    private void ScanTo(int end)
    {
        while (at < end)
        {
            var next = text.AsSpan(at, end - at).IndexOf('#');
            if (next < 0) break;
            at += next;
            if (at > 0 && !Lexical.IsSpace(text[at - 1]) && text[at - 1] != '\uFEFF')
            {
                at++;
                continue;
            }

            var stop = Lexical.LineEnd(text, at, text.Length);
            found.Add(new Comment(TextSpan.FromBounds(at, stop)));
            at = stop;
        }

        at = Math.Max(at, end);
    }
}
