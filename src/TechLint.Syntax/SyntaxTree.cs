using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>A comment, from its <c>#</c> to the end of its line.</summary>
public readonly record struct Comment(TextSpan Span);

/// <summary>The tree of one text, with everything that was wrong with it. Built by <see cref="YamlReader.Read(SourceText)"/>.</summary>
/// <param name="Source">The text.</param>
/// <param name="Root">The root node; null for a text without content.</param>
/// <param name="Problems">In order of their place.</param>
/// <param name="Comments">In order.</param>
public sealed record SyntaxTree(SourceText Source, Node? Root, ImmutableArray<Problem> Problems, ImmutableArray<Comment> Comments)
{
    /// <summary>
    /// The nodes that hold an offset or touch it, outermost first; empty where the root does not. Where two children meet at
    /// the offset, the one that begins there is taken.
    /// </summary>
    public ImmutableArray<TreeStep> PathTo(int offset)
    {
        var path = ImmutableArray.CreateBuilder<TreeStep>();
        if (Root is not null && Root.Span.Touches(offset)) path.Add(new TreeStep(Root, null, -1));
        while (path.Count > 0 && Below(path[^1].Node, offset) is { } next) path.Add(next);
        return path.ToImmutable();
    }

    private static TreeStep? Below(Node node, int offset)
    {
        TreeStep? found = null;
        if (node is MappingNode mapping)
        {
            for (var i = 0; i < mapping.Entries.Length && mapping.Entries[i].Span.Start <= offset; i++)
            {
                var entry = mapping.Entries[i];
                if (!entry.Span.Touches(offset)) continue;
                if (entry.Value.Span.Touches(offset)) found = new TreeStep(entry.Value, entry, i);
                else if (entry.Key.Span.Touches(offset)) found = new TreeStep(entry.Key, entry, i);
            }
        }
        else if (node is SequenceNode sequence)
        {
            for (var i = 0; i < sequence.Items.Length && sequence.Items[i].Span.Start <= offset; i++)
            {
                if (sequence.Items[i].Span.Touches(offset)) found = new TreeStep(sequence.Items[i], null, i);
            }
        }

        return found;
    }
}

/// <summary>One step on the way from the root of a tree to a place in it.</summary>
/// <param name="Node">The node; a key where the place is in a key (<c>Node == Entry.Key</c>).</param>
/// <param name="Entry">The entry that holds it; null for the root and for an item of a list.</param>
/// <param name="Index">Its place among its parent's entries or items, from 0; -1 for the root.</param>
public readonly record struct TreeStep(Node Node, Entry? Entry, int Index);

