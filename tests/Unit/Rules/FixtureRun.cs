using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Tests.Tools.Fixtures;

namespace TechLint.Tests.Unit.Rules;

/// <summary>Sets up a fixture's case as a workspace in memory and checks it.</summary>
internal static class FixtureRun
{
    public static readonly DateOnly Day = new(2026, 11, 24);

    /// <summary>The base, with the line ends wanted.</summary>
    public static TextStore Base(string lineEnd = "\n") =>
        FixtureReader.Base.Aggregate(TextStore.Empty, (store, file) => store.With(file.Key, Ended(file.Value, lineEnd)));

    public static TextStore StoreOf(FixtureCase one, string lineEnd) => one.Files.Aggregate(Base(lineEnd), (store, file) =>
        file.Bytes is { } bytes ? store.With(file.Path, bytes) : store.With(file.Path, Ended(file.Text!, lineEnd)));

    public static Snapshot SnapshotOf(FixtureCase one, string lineEnd) => Snapshot.Open(StoreOf(one, lineEnd), WorkspaceOptions.For(Day));

    /// <summary>The findings of the files that the case shows and of all that depend on them.</summary>
    public static CheckRun Check(FixtureCase one, Snapshot snapshot)
    {
        var files = one.Files.SelectMany(file => snapshot.DependantsOf(file.Path).Append(file.Path)).Distinct(StringComparer.Ordinal).ToArray();
        return Checker.Check(snapshot, files, jobs: 1, Rules(one.Throwing), CancellationToken.None);
    }

    /// <summary>Findings in the words of marks, in their order.</summary>
    public static ImmutableArray<ExpectedFinding> Marks(CheckRun run) =>
    [
        .. run.Findings.Where(found => found.Counts).Select(found => Mark(found.Finding, run.Sources.GetValueOrDefault(found.Finding.File))),
    ];

    public static string Ended(string text, string lineEnd) => text.Replace("\n", lineEnd, StringComparison.Ordinal);

    private static ExpectedFinding Mark(Finding finding, SourceText? source)
    {
        if (source is null) return new(finding.File, finding.Rule, 0, 0, 0, 0, finding.Message);
        var (line, column) = Place(source.Text, finding.Span.Start);
        var (endLine, endColumn) = Place(source.Text, finding.Span.End);
        return new(finding.File, finding.Rule, line, column, endLine, endColumn, finding.Message);
    }

    /// <summary>Counted here on purpose, and not by the line map that the reports use.</summary>
    private static (int Line, int Column) Place(string text, int offset)
    {
        var before = text[..offset];
        return (before.Count(letter => letter == '\n'), offset - (before.LastIndexOf('\n') + 1));
    }

    private static ImmutableArray<TechniqueRule> Rules(string? throwing) => throwing is null
        ? RuleRegistry.OfTechniques
        : [.. RuleRegistry.OfTechniques.Select(rule => rule.Name == throwing ? new Throwing(rule.Description) : rule)];

    /// <summary>A rule that fails whatever it is given.</summary>
    private sealed class Throwing(RuleDescription description) : TechniqueRule
    {
        public override RuleDescription Description => description;

        public override void Check(TechniqueContext context) => throw new InvalidOperationException("A text of the machine that no user may see.");
    }
}
