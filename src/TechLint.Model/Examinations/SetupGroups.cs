using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Techniques;

namespace TechLint.Model.Examinations;

/// <summary>Setups that make one examination, with the band that they share.</summary>
/// <param name="IsContested">Another setup claims the same part without being a pass of it: which one is scanned, nobody can say.</param>
internal sealed record SetupGroup(ImmutableArray<Setup> Setups, QuantityBand Thickness, QuantityBand OutsideDiameter, bool IsContested);

/// <summary>
/// Setups that share a band of thickness and diameter are one examination when each states its pass; every other setup is one by itself.
/// </summary>
public static class SetupGroups
{
    internal static IEnumerable<SetupGroup> Of(Technique technique)
    {
        var setups = technique.Setups.Items;
        var taken = new HashSet<Setup>(ReferenceEqualityComparer.Instance);
        foreach (var setup in setups)
        {
            if (!taken.Add(setup)) continue;
            var group = ImmutableArray.Create(setup);
            var thickness = ThicknessOf(technique, setup);
            var diameter = DiameterOf(technique, setup);
            if (setup.Pass.IsKnown)
            {
                foreach (var other in setups)
                {
                    if (taken.Contains(other) || !other.Pass.IsKnown || group.Any(member => member.Pass.Value == other.Pass.Value)) continue;
                    var otherThickness = ThicknessOf(technique, other);
                    var otherDiameter = DiameterOf(technique, other);
                    if (!Shares(thickness, otherThickness) || !Shares(diameter, otherDiameter)) continue;
                    taken.Add(other);
                    group = group.Add(other);
                    thickness = Intersect(thickness, otherThickness);
                    diameter = Intersect(diameter, otherDiameter);
                }
            }

            yield return new SetupGroup(group, thickness, diameter, setups.Any(other => group.Any(member => AreInConflict(technique, member, other))));
        }
    }

    /// <summary>Two setups claim the same thickness and diameter, and are not numbered as different passes.</summary>
    public static bool AreInConflict(Technique technique, Setup first, Setup second)
    {
        if (ReferenceEquals(first, second) || first.Pass.IsBroken || second.Pass.IsBroken) return false;
        if (first.Pass.IsKnown && second.Pass.IsKnown && first.Pass.Value != second.Pass.Value) return false;
        return Claim(first.Thickness, second.Thickness, technique.Component.Thickness)
            && Claim(first.OutsideDiameter, second.OutsideDiameter, technique.Component.OutsideDiameter);
    }

    private static bool Claim(Bound<QuantityBand> first, Bound<QuantityBand> second, Bound<QuantityBand> whole) =>
        !first.IsBroken && !second.IsBroken && !whole.IsBroken && Shares(first.IsKnown ? first.Value : whole.Or(default), second.IsKnown ? second.Value : whole.Or(default));

    /// <summary>The part of the component's thickness that a setup serves.</summary>
    public static QuantityBand ThicknessOf(Technique technique, Setup setup) => Within(setup.Thickness, technique.Component.Thickness);

    public static QuantityBand DiameterOf(Technique technique, Setup setup) => Within(setup.OutsideDiameter, technique.Component.OutsideDiameter);

    private static QuantityBand Within(Bound<QuantityBand> own, Bound<QuantityBand> whole) =>
        own.IsKnown ? whole.IsKnown && own.Value.Overlaps(whole.Value) ? Intersect(own.Value, whole.Value) : own.Value : whole.Or(default);

    private static bool Shares(QuantityBand left, QuantityBand right) => left == right || left.Overlaps(right);

    private static QuantityBand Intersect(QuantityBand left, QuantityBand right) => new(
        left.FromExact >= right.FromExact ? left.From : right.From, left.ToExact <= right.ToExact ? left.To : right.To);
}
