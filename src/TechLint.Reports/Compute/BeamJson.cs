using System.Text.Json;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>What a study adds to beams, laws and legs: delays in ns, rock, bounces, temperature. Angles in deg, shares in %.</summary>
internal static class BeamJson
{
    /// <summary>The reason that belongs beside the law's nulls, or null.</summary>
    public static string? WriteLaw(Utf8JsonWriter writer, LawStudy law, ComputeParts parts)
    {
        writer.Number("angle-shift", law.Rock?.AngleShift?.Degrees);
        writer.Number("exit-shift", law.Rock?.ExitShift?.Millimetres);
        writer.Number("squint", law.Rock?.Squint?.Degrees);
        writer.WriteStartArray("mode-converted");
        foreach (var leg in law.Legs.Where(leg => leg.IsModeConverted)) writer.WriteNumberValue(leg.Leg);
        writer.WriteEndArray();
        if (parts.Delays) WriteDelays(writer, law);
        return Words.Of(law.Fault) ?? law.Rock?.NotComputed ?? (parts.Delays ? law.Focal?.NotComputed : null);
    }

    public static void WriteLeg(Utf8JsonWriter writer, LegStudy leg)
    {
        if (leg.Reflected is { } reflected)
        {
            writer.WriteStartObject("converted");
            writer.WriteString("wave", Words.Of(reflected.Other));
            writer.Number("angle", reflected.OtherAngle?.Degrees);
            writer.Number("kept", reflected.Kept.Percent);
            writer.WriteEndObject();
            return;
        }

        writer.WriteNull("converted");
        if (leg.NotReflected is { } reason) writer.WriteString("not-computed", reason);
    }

    public static void WriteTemperature(Utf8JsonWriter writer, TemperatureStudy? study)
    {
        WriteShift(writer, "temperature-shift", study?.Permitted, study is null ? NoLaw : study.NotComputed);
        WriteShift(writer, "surface-temperature-shift", study?.OverSurface, study is null ? NoLaw : study.SurfaceNotComputed);
    }

    private const string NoLaw = "the beam has no law";

    private static void WriteDelays(Utf8JsonWriter writer, LawStudy law)
    {
        if (law.Focal is not { NotComputed: null } focal)
        {
            writer.WriteNull("delays");
            return;
        }

        writer.WriteStartArray("delays");
        foreach (var element in focal.Elements) writer.Number(element.Delay.Seconds * NanosecondsPerSecond);
        writer.WriteEndArray();
    }

    private static void WriteShift(Utf8JsonWriter writer, string name, AngleShift? shift, string? reason)
    {
        writer.WriteStartObject(name);
        writer.Number("shift", shift?.Shift.Degrees);
        writer.Number("at-angle", shift?.Law.Degrees);
        writer.Number("drift", shift?.Drift.Kelvins);
        if (shift is { } known) writer.WriteString("drifts", known.PartDrifts ? "wedge-and-part" : "wedge");
        else writer.WriteNull("drifts");
        if ((reason ?? Words.NotRefracted(shift)) is { } told) writer.WriteString("not-computed", told);
        writer.WriteEndObject();
    }

    internal const double NanosecondsPerSecond = 1e9;
}
