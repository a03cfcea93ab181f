using System.Globalization;
using System.Text.Json;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>The least coverage of an examination over its whole range when speeds of sound drift and edges are misaligned too, and where it is. No verdict rests on it.</summary>
internal static class DriftedCoverageReport
{
    public static void Write(Utf8JsonWriter writer, WorstCoverage worst)
    {
        if (worst.NotComputed is { } reason)
        {
            writer.WriteNull("with-drifts");
            writer.WriteString("with-drifts-not-computed", reason);
            return;
        }

        writer.WriteStartObject("with-drifts");
        writer.Number("volume", worst.Result.Volume.Percent);
        writer.WriteBoolean("complete", worst.Result.IsComplete);
        writer.Number("thickness", worst.Thickness.Millimetres);
        writer.Number("outside-diameter", worst.OutsideDiameter?.Millimetres);
        writer.Number("left-error", worst.LeftError.Millimetres);
        writer.Number("right-error", worst.RightError.Millimetres);
        writer.Number("skew-error", worst.SkewError.Degrees);
        writer.Number("part-velocity-error", worst.PartSpeedError.Percent);
        writer.Number("wedge-velocity-error", worst.WedgeSpeedError.Percent);
        writer.Number("misalignment", worst.Misalignment.Millimetres);
        writer.WriteEndObject();
    }

    public static string Text(WorstCoverage worst)
    {
        if (worst.NotComputed is { } reason) return $"coverage with drifts not computed: {reason}";
        var errors = new List<string>();
        Add("left probes", worst.LeftError.Millimetres, "mm");
        Add("right probes", worst.RightError.Millimetres, "mm");
        Add("skew", worst.SkewError.Degrees, "deg");
        Add("velocity in the part", worst.PartSpeedError.Percent, "%");
        Add("velocity in the wedge", worst.WedgeSpeedError.Percent, "%");
        Add("misalignment", worst.Misalignment.Millimetres, "mm");
        var diameter = worst.OutsideDiameter is { } outside ? $", outside diameter {Text(outside.Millimetres)} mm" : "";
        return $"coverage with drifts: {Text(worst.Result.Volume.Percent)} %{(worst.Result.IsComplete ? ", complete" : "")}, worst at thickness "
            + $"{Text(worst.Thickness.Millimetres)} mm{diameter}{(errors.Count == 0 ? "" : ": " + string.Join(", ", errors))}";

        void Add(string what, double error, string unit)
        {
            if (error != 0) errors.Add(string.Create(CultureInfo.InvariantCulture, $"{what} {error:+0.##;-0.##} {unit}"));
        }
    }

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
