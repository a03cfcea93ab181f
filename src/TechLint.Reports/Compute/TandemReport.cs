using System.Text.Json;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Tandem;

namespace TechLint.Reports.Compute;

/// <summary>A tandem pair's figures, as JSON and as text.</summary>
internal static class TandemReport
{
    private const string NoCrossing = "the axes do not cross within the wall";
    private const string NotServed = "the pair does not serve the place where its axes cross";

    public static void Write(Utf8JsonWriter writer, TandemStudy pair)
    {
        writer.WriteStartObject("tandem");
        writer.Number("spacing", pair.Spacing.Millimetres);
        writer.Number("crossing-depth", pair.CrossingDepth.Millimetres);
        writer.Number("crossing-y", pair.CrossingY.Millimetres);
        writer.WriteStartObject("zone");
        writer.Number("from", pair.ServedFrom.Millimetres);
        writer.Number("to", pair.ServedTo.Millimetres);
        writer.WriteEndObject();
        writer.Number("spacing-for-zone", pair.SpacingForZone.Millimetres);
        writer.Number("spacing-error", pair.SpacingError.Millimetres);
        if (WhyNot(pair) is { } reason) writer.WriteString("not-computed", reason);
        writer.WriteEndObject();
    }

    public static IEnumerable<string> Lines(TandemStudy pair, Func<Length, string> number)
    {
        yield return $"spacing {number(pair.Spacing)} mm, for the middle of the zone {number(pair.SpacingForZone)} mm";
        yield return WhyNot(pair) is { } reason
            ? $"zone not computed: {reason}"
            : $"axes cross at depth {number(pair.CrossingDepth)} mm, y {number(pair.CrossingY)} mm; serves {number(pair.ServedFrom)}..{number(pair.ServedTo)} mm";
    }

    private static string? WhyNot(TandemStudy pair) => !double.IsFinite(pair.CrossingDepth.Millimetres) ? NoCrossing
        : !double.IsFinite(pair.ServedFrom.Millimetres) ? NotServed
        : null;
}
