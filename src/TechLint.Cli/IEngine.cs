using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Cli;

/// <summary>What the commands ask of the rest of the house; tests put hand-made answers here.</summary>
internal interface IEngine
{
    ImmutableArray<RuleDescription> Rules { get; }

    ImmutableArray<LimitSource> LimitsOf(RuleDescription rule);

    /// <summary>Requirement sets that the call adds and that neither the program nor this workspace has.</summary>
    IReadOnlyList<string> UnknownSets(IFileStore store, WorkspaceOptions options);

    /// <param name="standardInput">A text that stands in the place of its file.</param>
    CheckRun Check(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, IReadOnlyCollection<string> files, int jobs,
        CancellationToken cancellation);

    ComputedTechnique? Compute(
        IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, Length? thickness, Length? outsideDiameter);

    /// <summary>The field of one beam; null where the file holds no technique that can be read that far.</summary>
    ComputedField? ComputeField(IFileStore store, WorkspaceOptions options, SourceText? standardInput, string file, FieldRequest request);

    /// <summary>Serves one editor until it leaves; the status to exit with.</summary>
    Task<int> ServeEditorAsync(Stream input, Stream output, CancellationToken cancellation);
}
