using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.LanguageServer;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Cli;

/// <summary>The engine that ships.</summary>
internal sealed class HouseEngine : IEngine
{
    public ImmutableArray<RuleDescription> Rules => RuleBook.All;

    public ImmutableArray<LimitSource> LimitsOf(RuleDescription rule) => RuleBook.LimitsOf(rule);

    public IReadOnlyList<string> UnknownSets(IFileStore store, WorkspaceOptions options) =>
        options.AddedRequirements.IsEmpty ? [] : Open(store, options, null).UnknownAddedRequirements;

    public CheckRun Check(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, IReadOnlyCollection<string> files, int jobs,
        CancellationToken cancellation) => Checker.Check(Open(store, options, standardInput), files, jobs, cancellation);

    public ComputedTechnique? Compute(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, Length? thickness, Length? outsideDiameter) =>
        Computing.Setups(Open(store, options, standardInput), file, thickness, outsideDiameter);

    public ComputedField? ComputeField(IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, FieldRequest request) =>
        ComputingField.Of(Open(store, options, standardInput), file, request);

    public Task<int> ServeEditorAsync(Stream input, Stream output, CancellationToken cancellation)
    {
        // Standard output belongs to the protocol from here on.
        Console.SetOut(Console.Error);
        return LanguageServerHost.RunAsync(input, output, new LanguageServerOptions(Clock.Today), cancellation);
    }

    private static Snapshot Open(IFileStore store, WorkspaceOptions options, SourceText? standardInput)
    {
        var snapshot = Snapshot.Open(store, options);
        return standardInput is null ? snapshot : snapshot.With(standardInput.Path, standardInput);
    }
}
