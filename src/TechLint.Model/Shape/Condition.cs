using System.Collections.Immutable;

namespace TechLint.Model.Shape;

/// <summary>What is asked of a group of keys beside its plain shape.</summary>
/// <param name="Required">Keys that must stand.</param>
/// <param name="OneOf">Sets of keys of which at least one must stand.</param>
/// <param name="Forbidden">Keys that have no meaning here.</param>
/// <param name="Below">What is asked of the groups or lists behind keys.</param>
/// <param name="Items">What is asked of each entry, where the demand is on a list.</param>
public sealed record Demand(ImmutableArray<string> Required, ImmutableArray<ImmutableArray<string>> OneOf, ImmutableArray<string> Forbidden,
    ImmutableArray<KeyValuePair<string, Demand>> Below, Demand? Items)
{
    public static readonly Demand None = new([], [], [], [], null);

    public Demand And(Demand? other)
    {
        if (other is null || ReferenceEquals(other, None)) return this;
        if (ReferenceEquals(this, None)) return other;
        return new Demand([.. Required.Union(other.Required, StringComparer.Ordinal)], [.. OneOf, .. other.OneOf],
            [.. Forbidden.Union(other.Forbidden, StringComparer.Ordinal)], [.. Below, .. other.Below],
            Items is null ? other.Items : Items.And(other.Items));
    }

    public Demand For(string key)
    {
        var demand = None;
        foreach (var (name, below) in Below)
        {
            if (string.Equals(name, key, StringComparison.Ordinal)) demand = demand.And(below);
        }

        return demand;
    }
}

/// <summary>When the scalar at a path of keys has one of the values, then one demand holds, else another.</summary>
/// <param name="Path">Keys from the group downwards. An empty path always holds.</param>
/// <param name="Values">The values; an empty list means any value.</param>
/// <param name="Then">What is asked when it holds.</param>
/// <param name="Otherwise">What is asked when it does not.</param>
public sealed record Condition(ImmutableArray<string> Path, ImmutableArray<string> Values, Demand Then, Demand Otherwise);
