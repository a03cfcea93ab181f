using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>From a place in a tree to the schema's word on it.</summary>
internal static class ShapeWalk
{
    /// <summary>The innermost key that the place belongs to; null where the schema knows none.</summary>
    public static KeyShape? KeyAt(ObjectShape root, IReadOnlyList<TreeStep> steps) => steps.Count == 0 ? null : Along(root, steps)[^1].Key;

    /// <summary>For each step its shape, of several the one that what stands there can have, and the innermost key. An unknown key ends both.</summary>
    public static ImmutableArray<(ValueShape? Shape, KeyShape? Key)> Along(ObjectShape root, IReadOnlyList<TreeStep> steps)
    {
        var along = ImmutableArray.CreateBuilder<(ValueShape?, KeyShape?)>(steps.Count);
        ValueShape? shape = root;
        KeyShape? key = null;
        for (var i = 0; i < steps.Count; i++)
        {
            if (i > 0 && steps[i].Entry is { } entry)
            {
                var map = Alternatives(shape).OfType<MapShape>().FirstOrDefault();
                key = Alternatives(shape).OfType<ObjectShape>().Select(group => group.Find(entry.Key.Value)).FirstOrDefault(candidate => candidate is not null);
                shape = key?.Value ?? map?.Value;
            }
            else if (i > 0)
            {
                shape = Alternatives(shape).OfType<ListShape>().FirstOrDefault()?.Item;
            }

            if (steps[i].Node is MappingNode && shape is AnyOfShape) shape = Alternatives(shape).FirstOrDefault(one => one is ObjectShape or MapShape) ?? shape;
            along.Add((shape, key));
        }

        return along.ToImmutable();
    }

    public static ImmutableArray<ValueShape> Alternatives(ValueShape? shape) => shape switch
    {
        null => [],
        AnyOfShape any => [.. any.Alternatives.SelectMany(one => Alternatives(one))],
        _ => [shape],
    };

    /// <summary>Keys that must stand in a group, by its shape and by what stands in it already, in canonical order.</summary>
    public static IEnumerable<KeyShape> Required(ObjectShape shape, MappingNode? group)
    {
        var demand = group is null ? Demand.None : ShapeChecker.DemandOf(shape, group.EffectiveEntries());
        return shape.Keys.Where(key => (key.IsRequired || demand.Required.Contains(key.Name, StringComparer.Ordinal))
            && !demand.Forbidden.Contains(key.Name, StringComparer.Ordinal));
    }
}
