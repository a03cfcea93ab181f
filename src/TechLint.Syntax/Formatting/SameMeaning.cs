namespace TechLint.Syntax.Formatting;

/// <summary>Whether two trees say the same: values, styles, anchors, comments. The order of keys counts only where asked.</summary>
internal static class SameMeaning
{
    public static bool Holds(SyntaxTree one, SyntaxTree other, bool keepsOrder) =>
        one.Problems.Length == other.Problems.Length && Holds(one.Root, other.Root, keepsOrder) && Comments(one, keepsOrder).SequenceEqual(Comments(other, keepsOrder), StringComparer.Ordinal);

    private static IEnumerable<string> Comments(SyntaxTree tree, bool keepsOrder)
    {
        var texts = tree.Comments.Select(comment => tree.Source.Slice(comment.Span).TrimEnd().ToString());
        return keepsOrder ? texts : texts.Order(StringComparer.Ordinal);
    }

    private static bool Holds(Node? one, Node? other, bool keepsOrder)
    {
        if (one is null || other is null) return one is null && other is null;
        if (one.GetType() != other.GetType() || !Same(one.Anchor, other.Anchor) || !Same(one.Tag, other.Tag)) return false;
        return (one, other) switch
        {
            (ScalarNode left, ScalarNode right) => left.Style == right.Style && Same(left.Value, right.Value),
            (AliasNode left, AliasNode right) => Same(left.Name, right.Name),
            (SequenceNode left, SequenceNode right) => left.IsFlow == right.IsFlow && left.Items.Length == right.Items.Length
                && left.Items.Zip(right.Items).All(pair => Holds(pair.First, pair.Second, keepsOrder)),
            (MappingNode left, MappingNode right) => left.IsFlow == right.IsFlow && left.Entries.Length == right.Entries.Length
                && Ordered(left, keepsOrder).Zip(Ordered(right, keepsOrder)).All(
                    pair => Holds(pair.First.Key, pair.Second.Key, keepsOrder) && Holds(pair.First.Value, pair.Second.Value, keepsOrder)),
            _ => false,
        };
    }

    /// <summary>Stable: entries of one key keep their order, which decides which of them counts.</summary>
    private static IEnumerable<Entry> Ordered(MappingNode mapping, bool keepsOrder) =>
        keepsOrder ? mapping.Entries : mapping.Entries.OrderBy(entry => entry.Key.Value, StringComparer.Ordinal);

    private static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.Ordinal);
}
