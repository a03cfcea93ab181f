using TechLint.Model.Binding;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

/// <summary>What a technique and its requirement sets say of temperature. Nothing of it stops a computation: what is missing or broken is left out.</summary>
internal static class Temperatures
{
    public static Examination WithTemperatures(this Examination examination, Technique technique, RequirementSets requirements, QuantityBand? thickness)
    {
        var limit = requirements.Find(LimitNames.TemperatureDifference, new LimitQuery(Thickness: thickness));
        var surface = technique.Component.Map.Band("surface-temperature");
        return examination with
        {
            BlockToPart = limit is { } stated ? new TemperatureDifference(stated.Value.InBase) : examination.BlockToPart,
            SurfaceTemperature = surface.IsKnown ? new Band<Temperature>(Of(surface.Value.From), Of(surface.Value.To)) : null,
            BlockTemperature = BlockOf(technique),
        };
    }

    /// <summary>The block's, where all references that state one agree; else none is taken.</summary>
    private static Temperature? BlockOf(Technique technique)
    {
        Temperature? block = null;
        foreach (var reference in technique.References.Items)
        {
            var stated = reference.Map.Quantity("temperature");
            if (!stated.IsKnown) continue;
            var here = new Temperature(stated.Value.InBase);
            if (block is { } known && known != here) return null;
            block = here;
        }

        return block;
    }

    private static Temperature? Of(Quantity? quantity) => quantity is { } known ? new Temperature(known.InBase) : null;
}
