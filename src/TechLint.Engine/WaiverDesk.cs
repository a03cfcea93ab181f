using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Documents;
using TechLint.Model.Techniques;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Rules.Waivers;

namespace TechLint.Engine;

/// <summary>Matches findings against the technique's waivers. A waiver that is expired, unapproved, forbidden or malformed hides nothing.</summary>
internal static class WaiverDesk
{
    public static ImmutableArray<CheckedFinding> Apply(IEnumerable<Finding> findings, LinkedTechnique linked, DateOnly asOf)
    {
        var used = new HashSet<Waiver>(ReferenceEqualityComparer.Instance);
        var result = ImmutableArray.CreateBuilder<CheckedFinding>();
        var waivers = linked.Technique.Waivers.Items;
        var forbidden = linked.Requirements.All.SelectMany(set => set.NeverWaivable).ToHashSet(StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            Waiver? covering = null;
            foreach (var waiver in waivers)
            {
                if (!Names(waiver, finding)) continue;
                used.Add(waiver);
                if (WaiverRules.Holds(waiver, forbidden, asOf)) covering ??= waiver;
            }

            result.Add(new CheckedFinding(finding, covering?.ApprovedBy.Value, Baselined: false));
        }

        var sink = new FindingSink(linked.Technique.File);
        foreach (var waiver in waivers) WaiverRules.Check(waiver, linked, forbidden, used.Contains(waiver), asOf, sink);
        result.AddRange(sink.Findings.Select(finding => new CheckedFinding(finding, null, Baselined: false)));
        return result.ToImmutable();
    }

    private static bool Names(Waiver waiver, Finding finding) =>
        waiver.Rule.Value == finding.Rule && waiver.At.TryGet(out var at) && ModelPath.IsWithin(finding.At, at);
}
