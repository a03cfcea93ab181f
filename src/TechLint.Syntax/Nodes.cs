using System.Collections.Immutable;

namespace TechLint.Syntax;

public enum ScalarStyle { Plain, SingleQuoted, DoubleQuoted, Literal, Folded }

/// <summary>
/// A node of the YAML tree. Immutable; its span lies within its parent's. The span covers the node's own text:
/// properties (anchor, tag) included, comments and trailing white space not.
/// </summary>
public abstract class Node(TextSpan span, string? anchor = null, string? tag = null)
{
    public TextSpan Span { get; } = span;

    public string? Anchor { get; } = anchor;

    /// <summary>The tag as written, such as <c>!!str</c>.</summary>
    public string? Tag { get; } = tag;

    /// <summary>The node that this one stands for: itself, or what an alias repeats; null where an alias has no target.</summary>
    public Node? Resolve() => this is AliasNode alias ? alias.Target : this;
}

/// <summary>A scalar. A value that was left out (<c>key:</c> and nothing more) is an empty plain scalar of zero length
/// right behind the colon.</summary>
public sealed class ScalarNode(TextSpan span, string value, ScalarStyle style, TextSpan contentSpan, bool spansLines,
    string? anchor = null, string? tag = null) : Node(span, anchor, tag)
{
    /// <summary>The value after quoting, escapes and folding are undone.</summary>
    public string Value { get; } = value;

    public ScalarStyle Style { get; } = style;

    /// <summary>The scalar's own characters without anchor and tag, quotes included.</summary>
    public TextSpan ContentSpan { get; } = contentSpan;

    /// <summary>True when the text runs over more than one line: for a plain scalar, often the sign of damage.</summary>
    public bool SpansLines { get; } = spansLines;

    public bool IsMissing => Style == ScalarStyle.Plain && Value.Length == 0;
}

/// <summary>One key with its value. The value's span is empty and right behind the colon when nothing follows.</summary>
public sealed class Entry(ScalarNode key, Node value, TextSpan span, bool isBroken = false)
{
    public ScalarNode Key { get; } = key;

    public Node Value { get; } = value;

    public TextSpan Span { get; } = span;

    /// <summary>True for a line among keys that is none: a problem covers it. Its key is the line's first word (or empty), so
    /// that whoever looks for that key finds it broken and not missing; nobody should call it unknown. Its value is an
    /// <see cref="ErrorNode"/>, or what stands below the line.</summary>
    public bool IsBroken { get; } = isBroken;

    public bool IsMerge => Key.Style == ScalarStyle.Plain && string.Equals(Key.Value, "<<", StringComparison.Ordinal);
}

public sealed class MappingNode(TextSpan span, ImmutableArray<Entry> entries, bool isFlow, string? anchor = null, string? tag = null)
    : Node(span, anchor, tag)
{
    /// <summary>The entries as written: duplicates and merge keys included.</summary>
    public ImmutableArray<Entry> Entries { get; } = entries;

    public bool IsFlow { get; } = isFlow;

    /// <summary>The entry of a key: the mapping's own first, then those merged in through <c>&lt;&lt;</c>.</summary>
    public Entry? Find(string key)
    {
        foreach (var entry in Entries)
        {
            if (!entry.IsMerge && string.Equals(entry.Key.Value, key, StringComparison.Ordinal)) return entry;
        }

        foreach (var merged in Merges.Of(this))
        {
            foreach (var entry in merged.Entries)
            {
                if (!entry.IsMerge && string.Equals(entry.Key.Value, key, StringComparison.Ordinal)) return entry;
            }
        }

        return null;
    }

    /// <summary>What the mapping holds once merges are done: its own entries in order, the first of each key, then those
    /// merged in whose key is not there yet.</summary>
    public ImmutableArray<Entry> EffectiveEntries()
    {
        var merges = Merges.Of(this);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var all = ImmutableArray.CreateBuilder<Entry>(Entries.Length);
        Take(this);
        foreach (var merged in merges) Take(merged);
        return all.ToImmutable();

        void Take(MappingNode from)
        {
            foreach (var entry in from.Entries)
            {
                if (!entry.IsMerge && (entry.IsBroken || seen.Add(entry.Key.Value))) all.Add(entry);
            }
        }
    }
}

public sealed class SequenceNode(TextSpan span, ImmutableArray<Node> items, bool isFlow, string? anchor = null, string? tag = null)
    : Node(span, anchor, tag)
{
    public ImmutableArray<Node> Items { get; } = items;

    public bool IsFlow { get; } = isFlow;
}

/// <summary>A reference to an anchored node. <see cref="Target"/> is null where no such anchor stands before it, where the
/// alias would contain itself, or where the ceiling on expansion is reached; a problem then says so.</summary>
public sealed class AliasNode(TextSpan span, string name, Node? target) : Node(span)
{
    public string Name { get; } = name;

    public Node? Target { get; private set; } = target;

    /// <summary>Called once, while the tree is built.</summary>
    internal void Bind(Node target) => Target = target;
}

/// <summary>Text that could not be read as YAML; a problem covers it. Whatever reads it stays silent.</summary>
public sealed class ErrorNode(TextSpan span) : Node(span);
