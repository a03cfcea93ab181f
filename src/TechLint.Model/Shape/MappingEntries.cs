using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>The entries of a mapping as they hold: aliases followed, merge keys resolved, of a key that is given twice the first.</summary>
public static class MappingEntries
{
    /// <summary>Own entries in their order, then those that merge keys bring in and nothing nearer overrides.</summary>
    public static ImmutableArray<Entry> Of(MappingNode mapping)
    {
        var found = ImmutableArray.CreateBuilder<Entry>(mapping.Entries.Length);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in mapping.Entries)
        {
            if (!entry.IsMerge && names.Add(entry.Key.Value)) found.Add(entry);
        }

        foreach (var entry in mapping.Entries)
        {
            if (entry.IsMerge) Merge(entry.Value, found, names);
        }

        return found.ToImmutable();
    }

    public static Entry? Find(ImmutableArray<Entry> entries, string key)
    {
        foreach (var entry in entries)
        {
            if (string.Equals(entry.Key.Value, key, StringComparison.Ordinal)) return entry;
        }

        return null;
    }

    /// <summary>The node that an alias stands for; other nodes stand for themselves. Null where an alias leads nowhere.</summary>
    public static Node? Resolve(Node node)
    {
        while (node is AliasNode alias)
        {
            if (alias.Target is not { } target) return null;
            node = target;
        }

        return node;
    }

    private static void Merge(Node value, ImmutableArray<Entry>.Builder found, HashSet<string> names)
    {
        switch (Resolve(value))
        {
            case MappingNode source:
                foreach (var entry in Of(source))
                {
                    if (names.Add(entry.Key.Value)) found.Add(entry);
                }

                break;
            case SequenceNode sources:
                foreach (var item in sources.Items)
                {
                    if (Resolve(item) is MappingNode) Merge(item, found, names);
                }

                break;
        }
    }
}
