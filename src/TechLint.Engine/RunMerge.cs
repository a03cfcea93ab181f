using System.Collections.Immutable;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>Runs over several workspaces as one, told from a folder that holds them all.</summary>
public static class RunMerge
{
    /// <param name="runs">At least one, all judged as of the same day; each with its root's path from the common folder, empty or with a slash at its end.</param>
    public static CheckRun Of(IReadOnlyList<(string Folder, CheckRun Run)> runs)
    {
        if (runs is [("", var only)]) return only;
        var sources = ImmutableDictionary.CreateBuilder<string, SourceText>(StringComparer.Ordinal);
        foreach (var (folder, run) in runs)
        {
            foreach (var (path, source) in run.Sources) sources[folder + path] = source;
        }

        var findings = runs.SelectMany(one => one.Run.Findings.Select(item => item with { Finding = Moved(item.Finding, one.Folder) }));
        return new CheckRun(
            runs[0].Run.AsOf,
            // Within a file the order stands; a stable sort keeps it.
            [.. findings.OrderBy(item => item.Finding.File, StringComparer.Ordinal)],
            runs.Select(one => one.Run.Summary).Aggregate(Sum), sources.ToImmutable());
    }

    private static Finding Moved(Finding finding, string folder) => finding with
    {
        File = folder + finding.File,
        Related = [.. finding.Related.Select(related => related with { File = folder + related.File })],
        Fixes = [.. finding.Fixes.Select(fix => fix with { Edits = [.. fix.Edits.Select(edit => edit with { File = folder + edit.File })] })],
    };

    private static CheckSummary Sum(CheckSummary a, CheckSummary b) => new(
        a.Files + b.Files, a.Errors + b.Errors, a.Warnings + b.Warnings, a.Notes + b.Notes, a.Waived + b.Waived, a.Baselined + b.Baselined,
        a.NotChecked + b.NotChecked, a.LoweredBySettings + b.LoweredBySettings, a.Excluded + b.Excluded);
}
