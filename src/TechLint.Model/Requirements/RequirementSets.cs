using System.Collections.Immutable;

namespace TechLint.Model.Requirements;

/// <summary>The sets that judge one technique, each with what it inherits.</summary>
public sealed class RequirementSets
{
    private readonly ImmutableArray<ImmutableArray<RequirementSet>> chains;

    private RequirementSets(ImmutableArray<ImmutableArray<RequirementSet>> chainsOfSets, ImmutableArray<string> unknown)
    {
        chains = chainsOfSets;
        Unknown = unknown;
    }

    public static readonly RequirementSets None = new([], []);

    /// <summary>Ids that no set answers to.</summary>
    public ImmutableArray<string> Unknown { get; }

    /// <summary>The sets named, in order, without their parents.</summary>
    public IEnumerable<RequirementSet> Named => chains.Select(chain => chain[0]);

    /// <summary>Every set that has a say, parents included.</summary>
    public IEnumerable<RequirementSet> All => chains.SelectMany(chain => chain).Distinct();

    /// <param name="ids">As named by the technique, the settings or the caller.</param>
    /// <param name="find">Built-in first, then the workspace's.</param>
    public static RequirementSets Resolve(IEnumerable<string> ids, Func<string, RequirementSet?> find)
    {
        var resolved = ImmutableArray.CreateBuilder<ImmutableArray<RequirementSet>>();
        var unknown = ImmutableArray.CreateBuilder<string>();
        foreach (var id in ids.Distinct(StringComparer.Ordinal))
        {
            var chain = Chain(id, find);
            if (chain.IsEmpty) unknown.Add(id);
            else resolved.Add(chain);
        }

        return new(resolved.ToImmutable(), unknown.ToImmutable());
    }

    /// <summary>A set followed by its ancestors; ends where one is unknown or comes round again.</summary>
    public static ImmutableArray<RequirementSet> Chain(string id, Func<string, RequirementSet?> find)
    {
        var chain = ImmutableArray.CreateBuilder<RequirementSet>();
        for (var next = find(id); next is not null && !chain.Contains(next);)
        {
            chain.Add(next);
            next = next.From.TryGet(out var parent) ? find(parent) : null;
        }

        return chain.ToImmutable();
    }

    /// <summary>
    /// The tightest limit of a name over all sets, or null where none states one. An owner's set that loosens an inherited limit
    /// takes its place only where it says why.
    /// </summary>
    public Limit? Find(LimitName name, LimitQuery query)
    {
        Limit? tightest = null;
        foreach (var chain in chains)
        {
            Limit? ofChain = null;
            for (var i = chain.Length - 1; i >= 0; i--)
            {
                var (own, loosens) = TightestOf(chain[i], name, query);
                if (own is not null && (ofChain is null || loosens || IsTighter(name, own, ofChain))) ofChain = own;
            }

            if (ofChain is not null && (tightest is null || IsTighter(name, ofChain, tightest))) tightest = ofChain;
        }

        return tightest;
    }

    private static (Limit? Limit, bool Loosens) TightestOf(RequirementSet set, LimitName name, LimitQuery query)
    {
        Limit? tightest = null;
        var loosens = false;
        foreach (var entry in set.Limits)
        {
            if (entry.Value is not { } value || !name.Kinds.Contains(value.Kind) || entry.Sense != name.Sense
                || !string.Equals(entry.Name.Value, name.Name, StringComparison.Ordinal) || !entry.When.Meets(query))
            {
                continue;
            }

            var limit = new Limit(value, new Citation(set.Id.Or("") ?? "", entry.Source.Or(null) ?? set.StandardText, entry.Basis));
            if (tightest is not null && !IsTighter(name, limit, tightest)) continue;
            tightest = limit;
            loosens = entry.Why.IsKnown;
        }

        return (tightest, loosens);
    }

    private static bool IsTighter(LimitName name, Limit limit, Limit than) =>
        name.Sense == LimitSense.AtMost ? limit.Value.Exact < than.Value.Exact : limit.Value.Exact > than.Value.Exact;
}
