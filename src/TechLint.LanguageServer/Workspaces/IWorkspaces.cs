using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.LanguageServer.Workspaces;

/// <summary>What the session asks of the engine. Paths of files are relative to a workspace's root, with forward slashes.</summary>
internal interface IWorkspaces
{
    /// <summary>The root folder of the workspace that a folder belongs to by a settings file in it or above it; null where there is none.</summary>
    string? FindRoot(string folder);

    /// <summary>A workspace as it stands on the disk.</summary>
    /// <param name="root">Absolute; null for a workspace without a folder, which holds nothing but open documents.</param>
    IWorkspace Open(string? root, DateOnly today);
}

/// <summary>A workspace as it stood at one moment. Immutable and safe to read from any thread.</summary>
internal interface IWorkspace
{
    /// <summary>With an open document's text in place of the file's; null gives the file back to the disk.</summary>
    IWorkspace With(string path, SourceText? text);

    /// <summary>With the named files (all where empty) read anew.</summary>
    IWorkspace Refreshed(IReadOnlyCollection<string> paths);

    FileFindings Check(string path, CancellationToken cancellation);

    /// <summary>Every file that can be judged, open ones included, in ordinal order.</summary>
    IReadOnlyList<string> Files { get; }

    /// <summary>A file's text; null where it cannot be read.</summary>
    SourceText? SourceOf(string path);

    /// <summary>Whether the findings of a file are at hand.</summary>
    bool IsKnown(string path);

    IReadOnlyList<string> DependantsOf(string path);

    /// <summary>What the editing services of the engine read; null in a workspace that has none.</summary>
    Snapshot? Snapshot { get; }

    HoverText? HoverAt(string path, int offset);
}

/// <summary>The findings of one file that count, in order, and the texts that they speak of.</summary>
internal sealed record FileFindings(ImmutableArray<Finding> Findings, IReadOnlyDictionary<string, SourceText> Sources);
