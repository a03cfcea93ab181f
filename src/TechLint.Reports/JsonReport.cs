using System.Globalization;
using System.Text.Json;
using TechLint.Model.Requirements;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Reports;

/// <summary>A run as <c>check --format json</c> gives it. Keys and their order are a promise to whoever reads it.</summary>
public static class JsonReport
{
    public const int Format = 1;

    public static void Write(TextWriter output, CheckRun run, ToolInfo tool) => JsonWriting.Write(output, writer =>
    {
        writer.WriteStartObject();
        writer.WriteNumber("format", Format);
        writer.WriteStartObject("tool");
        writer.WriteString("name", tool.Name);
        writer.WriteString("version", tool.Version);
        writer.WriteEndObject();
        writer.WriteString("as-of", run.AsOf.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        writer.WriteStartArray("findings");
        foreach (var finding in run.Findings) WriteFinding(writer, run, finding);
        writer.WriteEndArray();
        WriteSummary(writer, run.Summary);
        writer.WriteEndObject();
    });

    internal static string Name(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    /// <summary>The property that tells where a limit comes from.</summary>
    internal static void WriteRequirement(Utf8JsonWriter writer, Citation citation)
    {
        writer.WriteStartObject("requirement");
        writer.WriteString("set", citation.Set);
        writer.WriteString("source", citation.Source);
        writer.WriteString("basis", citation.BasisText);
        writer.WriteEndObject();
    }

    /// <summary>A number as it was rounded for display, a text, or null.</summary>
    internal static void WriteEvidence(Utf8JsonWriter writer, Evidence evidence)
    {
        writer.WriteStartObject();
        writer.WriteString("name", evidence.Name);
        if (evidence.Number is { } number) writer.Number("value", number);
        else writer.WriteString("value", evidence.Text);
        writer.WriteString("unit", evidence.Unit);
        writer.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter writer, CheckRun run, CheckedFinding item)
    {
        var finding = item.Finding;
        writer.WriteStartObject();
        writer.WriteString("rule", finding.Rule);
        writer.WriteString("severity", Name(finding.Severity));
        WritePlace(writer, run, finding.File, finding.Span);
        writer.WriteString("at", finding.At);
        writer.WriteString("message", finding.Message);
        writer.WriteStartArray("evidence");
        foreach (var evidence in finding.Evidence) WriteEvidence(writer, evidence);
        writer.WriteEndArray();
        if (finding.Requirement is { } citation)
        {
            WriteRequirement(writer, citation);
        }
        else
        {
            writer.WriteNull("requirement");
        }

        writer.WriteStartArray("related");
        foreach (var related in finding.Related)
        {
            writer.WriteStartObject();
            WritePlace(writer, run, related.File, related.Span);
            writer.WriteString("message", related.Message);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("fixes");
        foreach (var fix in finding.Fixes) WriteFix(writer, run, fix);
        writer.WriteEndArray();
        writer.WriteString("waived-by", item.WaivedBy);
        writer.WriteBoolean("baselined", item.Baselined);
        writer.WriteEndObject();
    }

    private static void WriteFix(Utf8JsonWriter writer, CheckRun run, Fix fix)
    {
        writer.WriteStartObject();
        writer.WriteString("title", fix.Title);
        writer.WriteBoolean("safe", fix.Safe);
        writer.WriteStartArray("edits");
        foreach (var edit in fix.Edits)
        {
            writer.WriteStartObject();
            WritePlace(writer, run, edit.File, edit.Span);
            writer.WriteString("text", edit.NewText);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter writer, CheckRun run, string file, TextSpan span)
    {
        writer.WriteString("file", file);
        var position = Position.Of(run.Sources.GetValueOrDefault(file), span);
        WritePlace(writer, "start", position.Start);
        WritePlace(writer, "end", position.End);
    }

    private static void WritePlace(Utf8JsonWriter writer, string name, Place place)
    {
        writer.WriteStartObject(name);
        writer.WriteNumber("line", place.Line);
        writer.WriteNumber("column", place.Column);
        writer.WriteEndObject();
    }

    private static void WriteSummary(Utf8JsonWriter writer, CheckSummary summary)
    {
        writer.WriteStartObject("summary");
        writer.WriteNumber("files", summary.Files);
        writer.WriteNumber("errors", summary.Errors);
        writer.WriteNumber("warnings", summary.Warnings);
        writer.WriteNumber("notes", summary.Notes);
        writer.WriteNumber("waived", summary.Waived);
        writer.WriteNumber("baselined", summary.Baselined);
        writer.WriteNumber("not-checked", summary.NotChecked);
        writer.WriteNumber("lowered-by-settings", summary.LoweredBySettings);
        writer.WriteNumber("excluded", summary.Excluded);
        writer.WriteEndObject();
    }
}
