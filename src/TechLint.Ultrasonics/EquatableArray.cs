using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace TechLint.Ultrasonics;

/// <summary>An immutable array that equals another by its content, so that records built of it are value-equal.</summary>
[CollectionBuilder(typeof(EquatableArray), nameof(EquatableArray.Create))]
public readonly struct EquatableArray<T>(ImmutableArray<T> items) : IEquatable<EquatableArray<T>>, IReadOnlyList<T>
{
    private ImmutableArray<T> Items { get; } = items;

    public int Count => Items.IsDefault ? 0 : Items.Length;

    public T this[int index] => Items[index];

    public ReadOnlySpan<T> AsSpan() => Items.IsDefault ? [] : Items.AsSpan();

    public bool Equals(EquatableArray<T> other) => AsSpan().SequenceEqual(other.AsSpan());

    public override bool Equals(object? obj) => obj is EquatableArray<T> other && Equals(other);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in AsSpan()) hash.Add(item);
        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)(Items.IsDefault ? [] : Items)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public static bool operator ==(EquatableArray<T> left, EquatableArray<T> right) => left.Equals(right);

    public static bool operator !=(EquatableArray<T> left, EquatableArray<T> right) => !left.Equals(right);
}

/// <summary>Lets <see cref="EquatableArray{T}"/> be written as a collection expression.</summary>
public static class EquatableArray
{
    public static EquatableArray<T> Create<T>(ReadOnlySpan<T> items) => new([.. items]);
}
