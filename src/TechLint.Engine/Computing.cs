using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>What follows from a technique, by setup in the author's order.</summary>
/// <param name="Id">The technique's id.</param>
public sealed record ComputedTechnique(string Id, ImmutableArray<ComputedSetup> Setups);

/// <param name="Id">The setup's id.</param>
/// <param name="Pass">Its pass number, where several setups make one examination.</param>
/// <param name="Cases">Each holds all passes of the examination; this setup's is the one with its id.</param>
/// <param name="NotComputed">Why there are no cases, or null.</param>
public sealed record ComputedSetup(string Id, int? Pass, ImmutableArray<CaseStudy> Cases, string? NotComputed);

/// <summary>The derived quantities of a technique, over its ranges or for one component.</summary>
public static class Computing
{
    /// <summary>Null where the file holds no technique that can be read that far. With a thickness or diameter given: only the setups
    /// that serve it, none where none does.</summary>
    public static ComputedTechnique? Setups(Snapshot snapshot, string path, Length? thickness, Length? outsideDiameter) =>
        throw new NotSupportedException();
}
