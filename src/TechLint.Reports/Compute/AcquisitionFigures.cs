using System.Globalization;
using System.Text.Json;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>
/// What taking the data asks beside speed, length and size: pulse rate at most (MHz, to a hertz), ambiguity, segments, lines, encoder steps; and for several passes
/// what they take together.
/// </summary>
internal static class AcquisitionFigures
{
    /// <summary>Digits behind the point of a MHz that tell a single hertz.</summary>
    private const int HertzInMegahertz = 6;

    public static void Write(Utf8JsonWriter writer, AcquisitionStudy study, CaseStudy of)
    {
        if (study.PulseRateAtMost is { } rate && Digits.Rounded(rate.Megahertz, HertzInMegahertz) is { } shown) writer.Number("pulse-rate-at-most", shown);
        else writer.WriteNull("pulse-rate-at-most");
        writer.Number("ambiguity-path", study.AmbiguityPath?.Millimetres);
        writer.Number("segments", study.Segments);
        writer.Number("lines", study.Lines);
        writer.Number("steps-per-increment", study.StepsPerIncrement?.Count);
        writer.Number("position-error-at-most", study.PositionErrorAtMost?.Millimetres);
        writer.Number("speed-at-most-for-data", study.SpeedAtMostForData?.MillimetresPerSecond);
        if (of.Passes.Length < 2) return;
        writer.Number("total-scan-time", of.AcquisitionTotals.ScanTime?.Seconds);
        writer.Number("total-data-size", of.AcquisitionTotals.DataSize?.Megabytes);
    }

    public static IEnumerable<string> Lines(AcquisitionStudy study, CaseStudy of)
    {
        List<string> recording = [];
        Add(recording, "pulse rate at most", study.PulseRateAtMost?.Hertz / 1000, "kHz");
        Add(recording, "echoes ambiguous from", study.AmbiguityPath?.Millimetres, "mm");
        Add(recording, "speed at most for the data", study.SpeedAtMostForData?.MillimetresPerSecond, "mm/s");
        if (recording.Count > 0) yield return "pulses: " + string.Join(", ", recording);
        List<string> lines = [];
        if (study.Lines is { } count) lines.Add(string.Create(CultureInfo.InvariantCulture, $"{count} in {study.Segments} segment{(study.Segments == 1 ? "" : "s")}"));
        Add(lines, "encoder steps an increment", study.StepsPerIncrement?.Count, "");
        if (study.PositionErrorAtMost is { Millimetres: > 0 }) Add(lines, "position error at most", study.PositionErrorAtMost?.Millimetres, "mm", 3);
        if (lines.Count > 0) yield return "lines: " + string.Join(", ", lines);
        List<string> totals = [];
        if (of.Passes.Length < 2) yield break;
        Add(totals, "scan time", of.AcquisitionTotals.ScanTime?.Seconds, "s");
        Add(totals, "data size", of.AcquisitionTotals.DataSize?.Megabytes, "MB");
        if (totals.Count > 0) yield return "all passes: " + string.Join(", ", totals);
    }

    private static void Add(List<string> parts, string name, double? value, string unit, int digits = 1)
    {
        if (value is { } number && Digits.Rounded(number, digits) is { } shown) parts.Add($"{name} {Digits.Text(shown)} {unit}".TrimEnd());
    }
}
