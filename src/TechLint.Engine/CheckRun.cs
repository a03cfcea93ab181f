using System.Collections.Immutable;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>A finding after waivers and baseline had their say; either way it stays in the list.</summary>
/// <param name="WaivedBy">The approver of the waiver that covers it, or null.</param>
public sealed record CheckedFinding(Finding Finding, string? WaivedBy, bool Baselined)
{
    public bool Counts => WaivedBy is null && !Baselined;
}

/// <summary>Errors, warnings and notes count only what is neither waived nor baselined.</summary>
public sealed record CheckSummary(
    int Files, int Errors, int Warnings, int Notes, int Waived, int Baselined, int NotChecked, int LoweredBySettings, int Excluded);

/// <summary>One run over a snapshot, ordered by file, line, column, rule, path and message.</summary>
/// <param name="Sources">The texts that findings speak of, by file, for lines and columns.</param>
public sealed record CheckRun(
    DateOnly AsOf, ImmutableArray<CheckedFinding> Findings, CheckSummary Summary, ImmutableDictionary<string, SourceText> Sources);
