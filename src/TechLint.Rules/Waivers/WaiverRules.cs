using TechLint.Model.Documents;
using TechLint.Model.Techniques;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Waivers;

/// <summary>Judges a waiver itself, once it is known which findings it names.</summary>
public static class WaiverRules
{
    /// <summary>True when a waiver may hide the findings that it names.</summary>
    public static bool Holds(Waiver waiver, IReadOnlySet<string> forbidden, DateOnly asOf) =>
        waiver.Rule.TryGet(out var rule) && RuleRegistry.Find(rule) is not null && !forbidden.Contains(rule)
        && waiver.Reason.IsKnown && waiver.ApprovedBy.IsKnown && waiver.Until.IsKnown && waiver.Until.Value >= asOf;

    /// <param name="used">It names at least one finding.</param>
    public static void Check(Waiver waiver, LinkedTechnique linked, IReadOnlySet<string> forbidden, bool used, DateOnly asOf, FindingSink sink)
    {
        if (!waiver.Rule.TryGet(out var name)) return;
        if (RuleRegistry.Find(name) is null && !RulesToCome.Names.Contains(name))
        {
            sink.Report(RuleRegistry.WaiverUnknownRule, waiver.Rule, NearestText.Of($"no rule is named {name}", name, RuleRegistry.Names));
        }
        else if (forbidden.Contains(name))
        {
            var sets = linked.Requirements.All.Where(set => set.NeverWaivable.Contains(name, StringComparer.Ordinal)).Select(set => set.Id.Or("a set"));
            sink.Report(RuleRegistry.WaiverForbidden, waiver.Rule, $"{name} is never to be waived under {string.Join(", ", sets)}");
        }
        else if (waiver.ApprovedBy.IsMissing)
        {
            sink.Report(RuleRegistry.WaiverUnapproved, waiver.Rule, $"nobody has approved the waiver of {name}");
        }
        else if (waiver.Until.IsKnown && waiver.Until.Value < asOf)
        {
            sink.Report(RuleRegistry.WaiverExpired, waiver.Until, $"the waiver of {name} ended on {waiver.Until.Value:yyyy-MM-dd}");
        }
        else if (!used && waiver.At.IsKnown)
        {
            sink.Report(RuleRegistry.WaiverUnused, waiver.Rule, $"the waiver of {name} covers no finding at {waiver.At.Value}");
        }
    }
}
