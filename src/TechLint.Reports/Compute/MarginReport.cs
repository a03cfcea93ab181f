using System.Globalization;
using System.Text.Json;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>How far the index offsets of a setup may move before the volume is no longer complete, over its whole range and tolerance; mm each way.</summary>
internal static class MarginReport
{
    public static void Write(Utf8JsonWriter writer, OffsetMargin? margin)
    {
        if (margin is not { Towards: { } towards, Away: { } away })
        {
            writer.WriteNull("margin");
            writer.WriteString("margin-not-computed", Reason(margin));
            return;
        }

        writer.WriteStartObject("margin");
        writer.Number("towards", Inwards(towards));
        writer.Number("away", Inwards(away));
        writer.WriteEndObject();
    }

    public static string Text(OffsetMargin? margin) => margin is { Towards: { } towards, Away: { } away }
        ? string.Create(CultureInfo.InvariantCulture, $"margin of the index offset: {Inwards(towards):0.0} mm towards the weld, {Inwards(away):0.0} mm away from it")
        : $"margin of the index offset not computed: {Reason(margin)}";

    private static string Reason(OffsetMargin? margin) => margin?.NotComputed ?? "there is no study of this setup";

    /// <summary>To the search's own resolution, and never more than was found to cover.</summary>
    private static double Inwards(Length length) => Math.Floor((length.Millimetres * 10) + 1e-6) / 10;
}
