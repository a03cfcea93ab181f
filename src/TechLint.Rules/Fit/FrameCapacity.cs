using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Techniques;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

/// <summary>What a frame's limits say of the part that a setup stands on.</summary>
internal sealed record FrameCapacity(Setup Setup, FrameItem Frame, ImmutableArray<FrameLimit> Limits, QuantityBand? OutsideDiameter, string PartName)
{
    /// <summary>The setups whose frame, orientation and form are known; null limits nothing.</summary>
    public static IEnumerable<FrameCapacity> Of(TechniqueContext context)
    {
        var technique = context.Technique;
        if (technique.Weld.Orientation.IsBroken || technique.Component.Form.IsBroken || technique.Component.OutsideDiameter.IsBroken) yield break;
        foreach (var setup in technique.Setups.Items)
        {
            if (!setup.Frame.TryGet(out var id) || context.Equipment.Find<FrameItem>(EquipmentKind.Frame, id) is not { } frame) continue;
            if (frame.Limits.Presence != Presence.Known || setup.Probes.IsBroken) continue;
            WeldOrientation? orientation = technique.Weld.Orientation.IsKnown ? technique.Weld.Orientation.Value : null;
            ComponentForm? form = technique.Component.Form.IsKnown ? technique.Component.Form.Value : null;
            ImmutableArray<FrameLimit> limits = [.. frame.Limits.Items.Where(limit => Fits(limit.Orientation, orientation) && Fits(limit.Form, form))];
            QuantityBand? diameter = form == ComponentForm.Plate ? null
                : setup.OutsideDiameter.IsKnown ? setup.OutsideDiameter.Value
                : technique.Component.OutsideDiameter.IsKnown ? technique.Component.OutsideDiameter.Value : null;
            var part = form is { } known ? Words.Spell(known) : "part";
            yield return new(setup, frame, limits, diameter, orientation is { } way ? $"{part} with a {Words.Spell(way)} weld" : part);
        }
    }

    /// <summary>
    /// The first stretch of diameters where the frame carries fewer probes than asked, or null where it carries them all over the range. A flat part
    /// is served by whatever has no upper end.
    /// </summary>
    public (decimal From, decimal To)? Unserved(int probes)
    {
        var serving = Limits.Where(limit => limit.Probes.IsKnown && limit.Probes.Value >= probes).Select(limit => limit.OutsideDiameter.Or(default));
        if (OutsideDiameter is { } asked) return Bands.FirstGap(asked, serving);
        return serving.Any(band => band.To is null) ? null : (decimal.MaxValue, decimal.MaxValue);
    }

    private static bool Fits<T>(Bound<T> wanted, T? actual) where T : struct =>
        wanted.IsMissing || actual is null || (wanted.IsKnown && EqualityComparer<T>.Default.Equals(wanted.Value, actual.Value));
}
