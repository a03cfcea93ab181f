using System.Collections.Immutable;
using TechLint.Cli;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Tests.Unit.Reports;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Tests.Unit.Cli;

/// <summary>An engine that finds what a test tells it to, and remembers what it was asked.</summary>
internal sealed class FakeEngine : IEngine
{
    public Func<string, IEnumerable<CheckedFinding>> Finds { get; init; } = _ => [];

    public Exception? Throws { get; init; }

    public ComputedTechnique? Computed { get; init; }

    public Func<WorkspaceOptions, DateOnly> AsOf { get; init; } = options => options.AsOf ?? options.Today;

    public List<(string Root, string[] Files, WorkspaceOptions Options, string? Input, int Jobs)> Asked { get; } = [];

    public (Length? Thickness, Length? Diameter) Component { get; private set; }

    public ImmutableArray<RuleDescription> Rules { get; } = [Runs.Rule];

    public ImmutableArray<LimitSource> LimitsOf(RuleDescription rule) =>
        [new LimitSource("coverage-at-least", "at least 100 %", new Citation("iso-13588-level-b", "ISO 13588:2019, 8.1", Basis.Memory))];

    public IReadOnlyList<string> UnknownSets(IFileStore store, WorkspaceOptions options) => [.. options.AddedRequirements.Where(id => id == "no-such-set")];

    public CheckRun Check(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, IReadOnlyCollection<string> files, int jobs,
        CancellationToken cancellation)
    {
        Asked.Add((((DiskStore)store).Root, [.. files], options, standardInput?.Text, jobs));
        if (Throws is not null) throw Throws;
        ImmutableArray<CheckedFinding> findings = [.. files.SelectMany(Finds)];
        int Count(Severity severity) => findings.Count(item => item.Counts && item.Finding.Severity == severity);
        return new CheckRun(
            AsOf(options), findings,
            new CheckSummary(
                files.Count, Count(Severity.Error), Count(Severity.Warning), Count(Severity.Note), findings.Count(item => item.WaivedBy is not null),
                findings.Count(item => item.Baselined), 0, 0, 0),
            files.Select(file => standardInput?.Path == file ? standardInput : store.Read(file).Source!).ToImmutableDictionary(source => source.Path));
    }

    public ComputedTechnique? Compute(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, Length? thickness, Length? outsideDiameter)
    {
        Asked.Add((((DiskStore)store).Root, [file], options, standardInput?.Text, 0));
        Component = (thickness, outsideDiameter);
        return Throws is null ? Computed : throw Throws;
    }

    public ComputedField? Field { get; init; }

    public FieldRequest? FieldAsked { get; private set; }

    public ComputedField? ComputeField(IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, FieldRequest request)
    {
        FieldAsked = request;
        return Field;
    }

    public async Task<int> ServeEditorAsync(Stream input, Stream output, CancellationToken cancellation)
    {
        await input.CopyToAsync(output, cancellation);
        return 0;
    }
}
