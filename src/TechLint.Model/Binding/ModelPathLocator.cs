using TechLint.Syntax;

namespace TechLint.Model.Binding;

/// <summary>From a place in a text to its model path.</summary>
public static class ModelPathLocator
{
    /// <summary>The path of the innermost value that holds an offset; empty for the whole file.</summary>
    public static string At(SyntaxTree tree, int offset) => At(tree.PathTo(offset));

    public static string At(IReadOnlyList<TreeStep> steps)
    {
        var path = "";
        for (var i = 1; i < steps.Count; i++)
        {
            var step = steps[i];
            if (step.Entry is { } entry)
            {
                path = ModelPath.Join(path, entry.Key.Value);
            }
            else
            {
                path = ItemOf(path, step.Node, step.Index);
            }
        }

        return path;
    }

    /// <summary>The path of an entry of the list at a path.</summary>
    public static string ItemOf(string listPath, Node item, int index) => ModelPath.Item(listPath, IdOf(item, listPath), index);

    /// <summary>Probes go by their station, everything else by its id.</summary>
    private static string? IdOf(Node node, string listPath)
    {
        var key = listPath.EndsWith("/probes", StringComparison.Ordinal) && listPath.StartsWith("setups/", StringComparison.Ordinal)
            || listPath.EndsWith("/stations", StringComparison.Ordinal) ? "station" : "id";
        return node.Resolve() is MappingNode mapping && mapping.Find(key)?.Value.Resolve() is ScalarNode { IsMissing: false } id ? id.Value : null;
    }
}
