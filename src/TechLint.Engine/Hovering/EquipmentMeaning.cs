using TechLint.Engine.Navigating;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine;

/// <summary>
/// What a number of a library does, where it follows from the library alone: in carbon steel, as the commonest part. What depends on a
/// technique is told there.
/// </summary>
internal static class EquipmentMeaning
{
    private const string Part = "carbon-steel";

    /// <param name="at">The model path of the number.</param>
    public static IEnumerable<string> Of(SyntaxTree tree, string at, int offset)
    {
        if (BuiltInMaterials.Find(Part) is not { } steel) return [];
        var group = tree.PathTo(offset).Select(step => step.Node).OfType<MappingNode>().LastOrDefault();
        return (at.Split('/'), group) switch
        {
            (["probes", _, "frequency"], { } probe) => Wavelengths(probe, steel),
            (["probes", _, "pitch" or "elements" or "gap"], { } probe) => Aperture(probe),
            (["wedges", _, "angle"], { } wedge) => Refracted(wedge, steel),
            _ => [],
        };
    }

    /// <summary>λ = c / f.</summary>
    private static IEnumerable<string> Wavelengths(MappingNode probe, Material steel)
    {
        if (Number(probe, "frequency") is not { Kind: QuantityKind.Frequency, InBase: > 0 } frequency) yield break;
        if (steel.Transverse is { } transverse) yield return $"wavelength in {Part}: {Wavelength(transverse, frequency)} transverse";
        yield return $"wavelength in {Part}: {Wavelength(steel.Longitudinal, frequency)} longitudinal";
    }

    /// <summary>mm/s over MHz is a millionth of a millimetre.</summary>
    private static string Wavelength(Speed speed, Quantity frequency) =>
        ComputedMeaning.Mm(new Length(speed.MillimetresPerSecond / (frequency.InBase * 1e6)), 2);

    /// <summary>n × pitch − gap.</summary>
    private static IEnumerable<string> Aperture(MappingNode probe)
    {
        if (Number(probe, "pitch") is not { Kind: QuantityKind.Length } pitch || !int.TryParse(Text(probe, "elements"), System.Globalization.CultureInfo.InvariantCulture, out var elements)) yield break;
        var gap = Number(probe, "gap") is { Kind: QuantityKind.Length } between ? between.InBase : 0;
        var whole = (elements * pitch.InBase) - gap;
        if (whole > 0) yield return $"whole array: {ComputedMeaning.Mm(new Length(whole), 2)}";
    }

    /// <summary>sin θ = (c / cw) sin α: where a law without steering goes.</summary>
    private static IEnumerable<string> Refracted(MappingNode wedge, Material steel)
    {
        if (Number(wedge, "angle") is not { Kind: QuantityKind.Angle } slope) yield break;
        const double MetresToMillimetres = 1000;
        var inWedge = Number(wedge, "velocity") is { Kind: QuantityKind.Speed } own ? own.InBase * MetresToMillimetres
            : BuiltInMaterials.Find(Text(wedge, "material"))?.Longitudinal.MillimetresPerSecond ?? double.NaN;
        foreach (var (wave, speed) in new[] { ("transverse", steel.Transverse), ("longitudinal", steel.Longitudinal) })
        {
            if (speed is not { } inPart || !(inWedge > 0)) continue;
            var sine = inPart.MillimetresPerSecond / inWedge * Math.Sin(double.DegreesToRadians(slope.InBase));
            yield return Math.Abs(sine) < 1
                ? $"without steering: {ComputedMeaning.Number(double.RadiansToDegrees(Math.Asin(sine)), 1)} deg {wave} in {Part}"
                : $"without steering: no {wave} wave in {Part}, past the critical angle";
        }
    }

    private static Quantity? Number(MappingNode group, string key) => QuantityParser.Parse(Text(group, key));

    private static string Text(MappingNode group, string key) => group.Find(key)?.Value.Resolve() is ScalarNode scalar ? scalar.Value : "";
}
