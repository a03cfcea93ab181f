using TechLint.Model.Binding;
using TechLint.Syntax;

namespace TechLint.Engine.Completing;

/// <summary>Model paths of a technique, one segment at a time: what stands below the path that is written so far, to any depth.</summary>
internal static class PlaceChoices
{
    /// <summary>Where a waiver names a place in the list of waivers, nothing is gained.</summary>
    private const string Waivers = "waivers";

    public static IEnumerable<CompletionChoice> Of(SyntaxTree tree, string written)
    {
        var slash = written.LastIndexOf('/');
        var parent = slash < 0 ? "" : written[..slash];
        if (tree.Root is not { } root || Find(root, "", parent) is not { } place) yield break;
        foreach (var (at, node) in Below(place, parent))
        {
            if (at is Waivers) continue;
            yield return new CompletionChoice(at, at, null, ChoiceKind.Name, Detail(node), "", false);

            // At the top also the setups and references themselves: they are what most waivers speak of.
            if (parent.Length > 0 || node is not SequenceNode) continue;
            foreach (var (item, one) in Below(node, at)) yield return new CompletionChoice(item, item, null, ChoiceKind.Name, Detail(one), "", false);
        }
    }

    private static Node? Find(Node from, string at, string wanted)
    {
        if (at == wanted) return from;
        foreach (var (path, node) in Below(from, at))
        {
            if (wanted == path || wanted.StartsWith(path + "/", StringComparison.Ordinal)) return Find(node, path, wanted);
        }

        return null;
    }

    private static IEnumerable<(string At, Node Node)> Below(Node node, string at)
    {
        switch (node.Resolve())
        {
            case MappingNode mapping:
                foreach (var entry in mapping.EffectiveEntries().Where(entry => !entry.IsBroken && entry.Key.Value.Length > 0)) yield return (ModelPath.Join(at, entry.Key.Value), entry.Value);
                break;
            case SequenceNode sequence:
                for (var i = 0; i < sequence.Items.Length; i++) yield return (ModelPathLocator.ItemOf(at, sequence.Items[i], i), sequence.Items[i]);
                break;
        }
    }

    private static string Detail(Node node) => node.Resolve() is ScalarNode { IsMissing: false, SpansLines: false } scalar ? scalar.Value : "";
}
