namespace TechLint.Syntax;

/// <summary>What <c>&lt;&lt;</c> brings into a mapping.</summary>
internal static class Merges
{
    /// <summary>Every mapping merged into one, each once: nearer ones first. Safe against circles and repetition.</summary>
    public static List<MappingNode> Of(MappingNode mapping)
    {
        var found = new List<MappingNode>();
        Collect(mapping, found, mapping);
        return found;
    }

    private static void Collect(MappingNode from, List<MappingNode> found, MappingNode start)
    {
        foreach (var entry in from.Entries)
        {
            if (!entry.IsMerge) continue;
            switch (entry.Value.Resolve())
            {
                case MappingNode one:
                    Take(one);
                    break;
                case SequenceNode several:
                    foreach (var item in several.Items)
                    {
                        if (item.Resolve() is MappingNode each) Take(each);
                    }

                    break;
            }
        }

        void Take(MappingNode one)
        {
            if (ReferenceEquals(one, start) || found.Contains(one)) return;
            found.Add(one);
            Collect(one, found, start);
        }
    }
}
