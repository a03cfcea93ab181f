namespace TechLint.Syntax;

/// <summary>
/// The pass over a finished tree that ties aliases to their anchors and finds keys that stand twice. The same for every way
/// of reading, so that all give one tree.
/// </summary>
internal sealed class References(List<Problem> problems)
{
    private readonly Dictionary<string, Node> anchors = new(StringComparer.Ordinal);
    private readonly Dictionary<Node, long> sizes = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Node> open = new(ReferenceEqualityComparer.Instance);
    private long repeated;
    private bool saidTooMany;

    /// <returns>How many nodes it stands for, aliases counted as what they repeat.</returns>
    public long Visit(Node node)
    {
        if (node.Anchor is { } anchor)
        {
            anchors[anchor] = node;
            open.Add(node);
        }

        long size = 1;
        switch (node)
        {
            case MappingNode mapping:
                FindDuplicates(mapping);
                foreach (var entry in mapping.Entries) size += Visit(entry.Key) + Visit(entry.Value);
                break;
            case SequenceNode sequence:
                foreach (var item in sequence.Items) size += Visit(item);
                break;
            case AliasNode alias:
                size = Tie(alias);
                break;
        }

        if (node.Anchor is not null)
        {
            open.Remove(node);
            sizes[node] = size;
        }

        return size;
    }

    private long Tie(AliasNode alias)
    {
        if (!anchors.TryGetValue(alias.Name, out var target))
        {
            problems.Add(Sentences.Syntax(alias.Span.Start, alias.Span.End, Sentences.UnknownAnchor));
            return 1;
        }

        if (open.Contains(target))
        {
            problems.Add(Sentences.Syntax(alias.Span.Start, alias.Span.End, Sentences.AliasInItself));
            return 1;
        }

        var size = sizes[target];
        if (repeated + size > ReadingLimits.AliasedNodes)
        {
            if (!saidTooMany) problems.Add(Sentences.Limit(alias.Span, "nodes repeated by aliases", "20000 nodes"));
            saidTooMany = true;
            return 1;
        }

        repeated += size;
        alias.Bind(target);
        return size;
    }

    private void FindDuplicates(MappingNode mapping)
    {
        if (mapping.Entries.Length < 2) return;
        var seen = mapping.Entries.Length > 8 ? new HashSet<string>(StringComparer.Ordinal) : null;
        for (var i = 0; i < mapping.Entries.Length; i++)
        {
            var entry = mapping.Entries[i];
            if (entry.IsBroken || entry.Key.IsMissing) continue;
            if (seen is null ? StandsBefore(mapping, i) : !seen.Add(entry.Key.Value))
            {
                problems.Add(Problem.Create(Sentences.DuplicateCode, entry.Key.Span, entry.Key.Value));
            }
        }
    }

    private static bool StandsBefore(MappingNode mapping, int index)
    {
        var key = mapping.Entries[index].Key.Value;
        for (var i = 0; i < index; i++)
        {
            var other = mapping.Entries[i];
            if (!other.IsBroken && string.Equals(other.Key.Value, key, StringComparison.Ordinal)) return true;
        }

        return false;
    }
}
