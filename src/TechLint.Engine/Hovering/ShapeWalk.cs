using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>From a place in a tree to the schema's word on it.</summary>
internal static class ShapeWalk
{
    /// <summary>The innermost key that the place belongs to; null where the schema knows none.</summary>
    public static KeyShape? KeyAt(ObjectShape root, IReadOnlyList<TreeStep> steps)
    {
        ValueShape? shape = root;
        KeyShape? key = null;
        for (var i = 1; i < steps.Count && shape is not null; i++)
        {
            if (steps[i].Entry is not { } entry)
            {
                shape = Alternatives(shape).OfType<ListShape>().FirstOrDefault()?.Item;
                continue;
            }

            var found = Alternatives(shape).OfType<ObjectShape>().Select(group => group.Find(entry.Key.Value)).FirstOrDefault(candidate => candidate is not null);
            if (found is null) return null;
            key = found;
            shape = found.Value;
        }

        return key;
    }

    private static System.Collections.Immutable.ImmutableArray<ValueShape> Alternatives(ValueShape shape) => shape is AnyOfShape any ? any.Alternatives : [shape];
}
