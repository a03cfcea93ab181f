using System.Diagnostics.CodeAnalysis;
using TechLint.Syntax;

namespace TechLint.Model.Binding;

public enum Presence
{
    /// <summary>Left out. The span is where it would belong: its owner's.</summary>
    Missing,

    Known,

    /// <summary>Written, but not to be understood; a problem covers it, so whatever reads it stays silent.</summary>
    Broken,
}

/// <summary>A value with its place: the characters and the model path.</summary>
public readonly record struct Bound<T>(Presence Presence, T? Value, TextSpan Span, string Path)
{
    public bool IsKnown => Presence == Presence.Known;

    public bool IsMissing => Presence == Presence.Missing;

    public bool IsBroken => Presence == Presence.Broken;

    public bool TryGet([MaybeNullWhen(false)] out T value)
    {
        value = Value;
        return IsKnown;
    }

    public T? Or(T? fallback) => IsKnown ? Value : fallback;

    /// <summary>The same place with the value turned into another; a function that gives up makes it Broken.</summary>
    public Bound<TOther> Select<TOther>(Func<T, TOther> turn) =>
        IsKnown ? new(Presence.Known, turn(Value!), Span, Path) : new(Presence, default, Span, Path);
}
