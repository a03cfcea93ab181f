using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Model.Binding;

/// <summary>A list with its place. Broken means that some entry, or the whole, could not be understood: what is there still counts,
/// but nobody may conclude that something is missing.</summary>
public readonly record struct BoundList<T>(Presence Presence, ImmutableArray<T> Items, TextSpan Span, string Path)
{
    public bool IsMissing => Presence == Presence.Missing;

    public bool IsBroken => Presence == Presence.Broken;
}
