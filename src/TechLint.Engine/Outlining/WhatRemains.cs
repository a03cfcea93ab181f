using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine.Outlining;

/// <summary>Keys that a group must hold and which of them still miss.</summary>
/// <param name="Missing">In canonical order, each with its description.</param>
public sealed record Remaining(string Title, ImmutableArray<KeyShape> Missing);

public static class WhatRemains
{
    /// <summary>Of the innermost group around a place in which something is missing; null where nothing is.</summary>
    public static Remaining? At(SyntaxTree tree, int offset)
    {
        if (FormatKinds.Of(tree.Source.Path) is not { } kind) return null;
        var steps = tree.PathTo(offset);
        var shapes = ShapeWalk.Along(FormatShapes.Of(kind), steps);
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            if (steps[i].Node is not MappingNode group || shapes[i].Shape is not ObjectShape shape) continue;
            ImmutableArray<KeyShape> missing = [.. ShapeWalk.Required(shape, group).Where(key => group.Find(key.Name) is null)];
            if (!missing.IsEmpty) return new Remaining(shape.Title.Length > 0 ? shape.Title : shapes[i].Key?.Title ?? "", missing);
        }

        return null;
    }
}
