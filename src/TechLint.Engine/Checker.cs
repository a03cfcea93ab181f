using System.Collections.Immutable;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>Turns a snapshot into findings. Pure: the same snapshot and files give the same run on any thread count.</summary>
public static class Checker
{
    /// <param name="files">Relative paths of techniques, libraries, sets and settings to judge.</param>
    public static CheckRun Check(Snapshot snapshot, IReadOnlyCollection<string> files, int jobs, CancellationToken cancellation) =>
        Check(snapshot, files, jobs, RuleRegistry.OfTechniques, cancellation);

    internal static CheckRun Check(
        Snapshot snapshot, IReadOnlyCollection<string> files, int jobs, ImmutableArray<TechniqueRule> rules, CancellationToken cancellation)
    {
        string[] asked = [.. files.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var severities = new SeveritySettings(snapshot.Settings);
        string[] judged = [.. asked.Where(file => !severities.LeavesOut(file))];
        var results = new FileCheck[judged.Length];
        if (jobs <= 1 || judged.Length == 1)
        {
            for (var i = 0; i < judged.Length; i++)
            {
                cancellation.ThrowIfCancellationRequested();
                results[i] = FileCheck.Of(snapshot, judged[i], severities, rules, cancellation);
            }
        }
        else
        {
            var parallel = new ParallelOptions { MaxDegreeOfParallelism = jobs, CancellationToken = cancellation };
            Parallel.For(0, judged.Length, parallel, i => results[i] = FileCheck.Of(snapshot, judged[i], severities, rules, cancellation));
        }

        var sources = ImmutableDictionary.CreateBuilder<string, SourceText>(StringComparer.Ordinal);
        foreach (var file in judged) AddSource(file);
        var findings = results.SelectMany(result => result.Findings).ToList();
        foreach (var file in findings.SelectMany(found => found.Finding.Related.Select(place => place.File))) AddSource(file);
        return new CheckRun(
            snapshot.AsOf, [.. FindingOrder.Sort(findings)], Summarise(findings, results, judged.Length, asked.Length - judged.Length), sources.ToImmutable());

        void AddSource(string file)
        {
            if (!sources.ContainsKey(file) && snapshot.TreeOf(file)?.Source is { } source) sources.Add(file, source);
        }
    }

    private static CheckSummary Summarise(List<CheckedFinding> findings, FileCheck[] results, int files, int excluded)
    {
        int Count(Func<CheckedFinding, bool> wanted) => findings.Count(wanted);
        return new CheckSummary(
            files, Count(found => found.Counts && found.Finding.Severity == Rules.Findings.Severity.Error),
            Count(found => found.Counts && found.Finding.Severity == Rules.Findings.Severity.Warning),
            Count(found => found.Counts && found.Finding.Severity == Rules.Findings.Severity.Note), Count(found => found.WaivedBy is not null),
            Count(found => found.Baselined), Count(found => found.Counts && found.Finding.Rule == "not-checked"), results.Sum(result => result.Lowered), excluded);
    }
}
