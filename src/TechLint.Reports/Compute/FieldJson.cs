using System.Text.Json;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>What the field adds to a law and to coverage.</summary>
internal static class FieldJson
{
    /// <summary>Half-angles in the part, deg, and the grating lobe's echo level, dB beside the main lobe.</summary>
    public static void WriteLaw(Utf8JsonWriter writer, LawStudy law)
    {
        writer.Number("grating-lobe-level", law.GratingLobeLevel?.Decibels);
        if (law.Divergence is not { } divergence)
        {
            writer.WriteNull("divergence");
            return;
        }

        writer.WriteStartObject("divergence");
        writer.Number("one-way-6-db", divergence.OneWay6?.Degrees);
        writer.Number("one-way-20-db", divergence.OneWay20?.Degrees);
        writer.Number("echo-6-db", divergence.Echo6?.Degrees);
        writer.Number("echo-20-db", divergence.Echo20?.Degrees);
        writer.WriteEndObject();
    }

    /// <param name="writer">Inside the coverage object.</param>
    /// <param name="field">Null where it was not asked for.</param>
    public static void WriteCoverage(Utf8JsonWriter writer, FieldCoverage? field)
    {
        var drop = field is null ? "6" : Digits.Text(Digits.Rounded(-field.Drop.Decibels, 4) ?? 0);
        var key = $"within-{drop.Replace('.', '-')}-db";
        ComputeJsonReport.Shown(writer, key, field?.Within ?? default, field is { NotComputed: null });
        ComputeJsonReport.Shown(writer, $"{key}-of-own-laws", field?.WithinOwnLaws ?? default, field is { NotComputed: null });
        if (field is null) writer.WriteString($"{key}-not-computed", "asked for with --field-coverage");
        else if (field.NotComputed is { } reason) writer.WriteString($"{key}-not-computed", reason);
    }
}
