using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Model.Requirements;
using TechLint.Reports;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Reports;

/// <summary>Hand-made runs that reports are held to.</summary>
internal static class Runs
{
    public const string File = "techniques/gm ü#1.technique.yaml";

    /// <summary>A mark in front, a wrench outside the basic plane before the place, and CR LF line ends.</summary>
    public static readonly SourceText Source = new(File, "\uFEFFtechnique: GM\r\nnote: 🔧🔧 {index-offset: 26 mm}\r\nend: 1\r\n");

    public static readonly ToolInfo Tool = new("techlint", "0.1.0");

    public static readonly RuleDescription Rule = new(
        "volume-not-covered", RuleFamily.Coverage, Severity.Error, "Part of the examined volume is seen by no beam.",
        "A flaw there is missed.", "Move the probe or add a beam.", "coverage-at-least");

    public static TextSpan SpanOf(string text) => new(Source.Text.IndexOf(text, StringComparison.Ordinal), text.Length);

    public static Finding Coverage => new(
        "volume-not-covered", Severity.Error, File, SpanOf("26 mm"), "setups/seam/probes/1/index-offset",
        "index offset 26 mm leaves 4.1 % of the weld volume unseen at 25 mm",
        [new Evidence("covered", 95.90m, null, "%"), new Evidence("limit", 100.0m, null, "%"), new Evidence("thickness", 25m, null, "mm")],
        ["seen 95.9 %: worst at y -3.5..2.0 mm, z 21.0..25.0 mm"],
        new Citation("iso-13588-level-b", "ISO 13588:2019, 8.1", Basis.Memory),
        [new RelatedPlace("equipment/w.equipment.yaml", new TextSpan(0, 5), "the wedge is defined here")],
        [new Fix("Move it to 34 mm", false, [new TextEdit(File, SpanOf("26 mm"), "34 mm")])]);

    public static Finding Plain(Severity severity = Severity.Note, string rule = "unknown-key") => new(
        rule, severity, File, SpanOf("technique"), "", "no key is named \"technique\"", [], [], null, [], []);

    public static CheckRun Run(params CheckedFinding[] findings)
    {
        int Count(Severity severity) => findings.Count(item => item.Counts && item.Finding.Severity == severity);
        return new CheckRun(
            new DateOnly(2026, 11, 24), [.. findings],
            new CheckSummary(
                2, Count(Severity.Error), Count(Severity.Warning), Count(Severity.Note), findings.Count(item => item.WaivedBy is not null),
                findings.Count(item => item.Baselined), 0, 0, 0),
            ImmutableDictionary<string, SourceText>.Empty.Add(File, Source).Add(
                "equipment/w.equipment.yaml", new SourceText("equipment/w.equipment.yaml", "equipment: w\n")));
    }

    public static CheckedFinding Counted(Finding finding) => new(finding, null, false);

    public static string Written(Action<TextWriter> write)
    {
        using var writer = new StringWriter();
        write(writer);
        return writer.ToString();
    }
}
