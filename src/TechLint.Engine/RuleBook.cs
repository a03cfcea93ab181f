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
    public static ImmutableArray<RuleDescription> All => throw new NotSupportedException();

    public static ImmutableArray<LimitSource> LimitsOf(RuleDescription rule) => throw new NotSupportedException();
}
