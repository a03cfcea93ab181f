using System.Globalization;
using System.Text.Json;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Reports;

/// <summary>
/// A run as SARIF 2.1.0, for code hosts and viewers. It holds no clock time, machine name or full path, so the same input gives the
/// same bytes anywhere. Clauses named below are those of the OASIS standard.
/// </summary>
public static class SarifReport
{
    /// <summary>Stands for the workspace's root in every address (3.4.4); where that lies is for the reader to know.</summary>
    private const string UriBase = "WORKSPACE";

    /// <summary>Findings of one rule at one model path are the same finding in the next run, wherever its lines went (3.27.17).</summary>
    private const string Fingerprint = "ruleAndModelPath/v1";

    /// <param name="rules">Descriptions to draw from; only those of rules with findings are written.</param>
    /// <param name="exitStatus">The process's (3.20.10).</param>
    public static void Write(TextWriter output, CheckRun run, ToolInfo tool, IReadOnlyCollection<RuleDescription> rules, int exitStatus)
    {
        var known = rules.ToDictionary(rule => rule.Name, StringComparer.Ordinal);
        var used = run.Findings.Select(item => item.Finding.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        JsonWriting.Write(output, writer =>
        {
            writer.WriteStartObject();
            writer.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
            writer.WriteString("version", "2.1.0");
            writer.WriteStartArray("runs");
            writer.WriteStartObject();
            WriteTool(writer, tool, used.Select(name => (name, known.GetValueOrDefault(name))));
            WriteInvocation(writer, run, exitStatus);
            writer.WriteStartObject("originalUriBaseIds");
            writer.WriteStartObject(UriBase);
            WriteText(writer, "description", "The root of the workspace: the folder that holds techlint.yaml, or the one that was checked.");
            writer.WriteEndObject();
            writer.WriteEndObject();
            writer.WriteString("columnKind", "unicodeCodePoints");
            writer.WriteStartArray("results");
            foreach (var item in run.Findings) WriteResult(writer, run, item, used.BinarySearch(item.Finding.Rule, StringComparer.Ordinal));
            writer.WriteEndArray();
            writer.WriteEndObject();
            writer.WriteEndArray();
            writer.WriteEndObject();
        });
    }

    private static void WriteTool(Utf8JsonWriter writer, ToolInfo tool, IEnumerable<(string Name, RuleDescription? Rule)> rules)
    {
        writer.WriteStartObject("tool");
        writer.WriteStartObject("driver");
        writer.WriteString("name", tool.Name);
        writer.WriteString("version", tool.Version);
        writer.WriteString("semanticVersion", tool.Version);
        writer.WriteStartArray("rules");
        foreach (var (name, rule) in rules)
        {
            writer.WriteStartObject();
            writer.WriteString("id", name);
            if (rule is not null) WriteRule(writer, rule);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteRule(Utf8JsonWriter writer, RuleDescription rule)
    {
        WriteText(writer, "shortDescription", rule.Summary);
        WriteText(writer, "fullDescription", $"{rule.Summary} {rule.Why}");
        writer.WriteStartObject("help");
        writer.WriteString("text", $"{rule.Why}\n\n{rule.Remedy}\n\n{ExplainReport.Caution}");
        writer.WriteString("markdown", $"**Why.** {rule.Why}\n\n**What to do.** {rule.Remedy}\n\n*{ExplainReport.Caution}*");
        writer.WriteEndObject();
        writer.WriteStartObject("defaultConfiguration");
        writer.WriteString("level", JsonReport.Name(rule.Severity));
        writer.WriteEndObject();
        writer.WriteStartObject("properties");
        writer.WriteStartArray("tags");
        writer.WriteStringValue(ExplainReport.Name(rule.Family));
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteInvocation(Utf8JsonWriter writer, CheckRun run, int exitStatus)
    {
        writer.WriteStartArray("invocations");
        writer.WriteStartObject();
        writer.WriteNumber("exitCode", exitStatus);
        writer.WriteBoolean("executionSuccessful", exitStatus is 0 or 1);
        writer.WriteStartObject("properties");
        writer.WriteString("as-of", run.AsOf.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        writer.WriteEndObject();
        writer.WriteEndObject();
        writer.WriteEndArray();
    }

    private static void WriteResult(Utf8JsonWriter writer, CheckRun run, CheckedFinding item, int ruleIndex)
    {
        var finding = item.Finding;
        writer.WriteStartObject();
        writer.WriteString("ruleId", finding.Rule);
        writer.WriteNumber("ruleIndex", ruleIndex);
        writer.WriteString("level", JsonReport.Name(finding.Severity));
        WriteText(writer, "message", string.Join('\n', finding.Detail.Prepend(finding.Message + ".")));
        writer.WriteStartArray("locations");
        writer.WriteStartObject();
        WritePhysicalLocation(writer, run, finding.File, finding.Span);
        if (finding.At.Length > 0)
        {
            writer.WriteStartArray("logicalLocations");
            writer.WriteStartObject();
            writer.WriteString("fullyQualifiedName", finding.At);
            writer.WriteEndObject();
            writer.WriteEndArray();
        }

        writer.WriteEndObject();
        writer.WriteEndArray();
        if (!finding.Related.IsEmpty) WriteRelated(writer, run, finding);
        writer.WriteStartObject("partialFingerprints");
        writer.WriteString(Fingerprint, $"{finding.Rule}@{finding.At}");
        writer.WriteEndObject();
        if (!finding.Fixes.IsEmpty) WriteFixes(writer, run, finding);
        if (!item.Counts) WriteSuppressions(writer, item);
        WriteProperties(writer, finding);
        writer.WriteEndObject();
    }

    private static void WriteRelated(Utf8JsonWriter writer, CheckRun run, Finding finding)
    {
        writer.WriteStartArray("relatedLocations");
        for (var i = 0; i < finding.Related.Length; i++)
        {
            var related = finding.Related[i];
            writer.WriteStartObject();
            writer.WriteNumber("id", i);
            WritePhysicalLocation(writer, run, related.File, related.Span);
            WriteText(writer, "message", related.Message);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteFixes(Utf8JsonWriter writer, CheckRun run, Finding finding)
    {
        writer.WriteStartArray("fixes");
        foreach (var fix in finding.Fixes)
        {
            writer.WriteStartObject();
            WriteText(writer, "description", fix.Title);
            writer.WriteStartArray("artifactChanges");
            foreach (var edits in fix.Edits.GroupBy(edit => edit.File, StringComparer.Ordinal).OrderBy(edits => edits.Key, StringComparer.Ordinal))
            {
                writer.WriteStartObject();
                WriteArtifact(writer, edits.Key);
                writer.WriteStartArray("replacements");
                foreach (var edit in edits.OrderBy(edit => edit.Span))
                {
                    writer.WriteStartObject();
                    WriteRegion(writer, "deletedRegion", run, edit.File, edit.Span);
                    WriteText(writer, "insertedContent", edit.NewText);
                    writer.WriteEndObject();
                }

                writer.WriteEndArray();
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartObject("properties");
            writer.WriteBoolean("safe", fix.Safe);
            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    // A waiver stands in the technique itself; a baseline is a file of its own (3.35.2).
    private static void WriteSuppressions(Utf8JsonWriter writer, CheckedFinding item)
    {
        writer.WriteStartArray("suppressions");
        if (item.WaivedBy is { } approver) WriteSuppression(writer, "inSource", $"Waived by {approver}.");
        if (item.Baselined) WriteSuppression(writer, "external", "In the baseline.");
        writer.WriteEndArray();
    }

    private static void WriteSuppression(Utf8JsonWriter writer, string kind, string justification)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", kind);
        writer.WriteString("status", "accepted");
        writer.WriteString("justification", justification);
        writer.WriteEndObject();
    }

    private static void WriteProperties(Utf8JsonWriter writer, Finding finding)
    {
        if (finding.Evidence.IsEmpty && finding.Requirement is null) return;
        writer.WriteStartObject("properties");
        writer.WriteStartArray("evidence");
        foreach (var evidence in finding.Evidence) JsonReport.WriteEvidence(writer, evidence);
        writer.WriteEndArray();
        if (finding.Requirement is { } citation) JsonReport.WriteRequirement(writer, citation);

        writer.WriteEndObject();
    }

    private static void WritePhysicalLocation(Utf8JsonWriter writer, CheckRun run, string file, TextSpan span)
    {
        writer.WriteStartObject("physicalLocation");
        WriteArtifact(writer, file);
        WriteRegion(writer, "region", run, file, span);
        writer.WriteEndObject();
    }

    private static void WriteArtifact(Utf8JsonWriter writer, string file)
    {
        writer.WriteStartObject("artifactLocation");
        writer.WriteString("uri", string.Join('/', file.Split('/').Select(Uri.EscapeDataString)));
        writer.WriteString("uriBaseId", UriBase);
        writer.WriteEndObject();
    }

    private static void WriteRegion(Utf8JsonWriter writer, string name, CheckRun run, string file, TextSpan span)
    {
        var position = Position.Of(run.Sources.GetValueOrDefault(file), span);
        writer.WriteStartObject(name);
        writer.WriteNumber("startLine", position.Start.Line);
        writer.WriteNumber("startColumn", position.Start.Column);
        writer.WriteNumber("endLine", position.End.Line);
        writer.WriteNumber("endColumn", position.End.Column);
        writer.WriteEndObject();
    }

    private static void WriteText(Utf8JsonWriter writer, string name, string text)
    {
        writer.WriteStartObject(name);
        writer.WriteString("text", text);
        writer.WriteEndObject();
    }
}
