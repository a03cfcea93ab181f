using System.Collections.Immutable;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;

namespace TechLint.Engine;

/// <summary>A limit that a rule reads, as one requirement set states it.</summary>
/// <param name="Limit">The limit's name.</param>
/// <param name="Text">What it asks for, such as <c>at most 1 mm</c>.</param>
public sealed record LimitSource(string Limit, string Text, Citation Citation);

/// <summary>Every rule, and where its limits come from in the built-in requirement sets.</summary>
public static class RuleBook
{
    /// <summary>By family, then by name.</summary>
    public static ImmutableArray<RuleDescription> All { get; } =
        [.. RuleRegistry.All.Select(rule => rule.Description).OrderBy(rule => rule.Family).ThenBy(rule => rule.Name, StringComparer.Ordinal)];

    public static ImmutableArray<LimitSource> LimitsOf(RuleDescription rule) =>
    [
        .. from id in BuiltInSets.Ids
           let set = BuiltInSets.Find(id)
           where set is not null
           from entry in set.Limits
           where entry.Value is not null && rule.Limits.Contains(entry.Name.Value, StringComparer.Ordinal)
           let sense = entry.Sense == LimitSense.AtMost ? "at most" : "at least"
           select new LimitSource(
               entry.Name.Value!, $"{sense} {entry.Value!.Value.Display()}", new Citation(id, entry.Source.Or(null) ?? set.StandardText, entry.Basis)),
    ];
}
