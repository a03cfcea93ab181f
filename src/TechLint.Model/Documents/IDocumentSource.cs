using TechLint.Syntax;

namespace TechLint.Model.Documents;

public enum LookupFault { None, NotFound, OutsideWorkspace, NotAFile, Unreadable, TooLarge, NotText, NotALibrary }

/// <summary>What a path led to: a document, or why there is none.</summary>
/// <param name="Path">The path relative to the workspace root, forward slashes.</param>
/// <param name="Tree">The text's tree, when there is no fault.</param>
public sealed record DocumentLookup(string Path, SyntaxTree? Tree, LookupFault Fault);

/// <summary>How the model reaches other files without touching a disk: the snapshot answers, from memory, overlay or disk.</summary>
public interface IDocumentSource
{
    /// <summary>The document that a file names by a path relative to its own folder.</summary>
    DocumentLookup Find(string fromFile, string path);

    /// <summary>A requirement set of the workspace by its id; null where it has none.</summary>
    DocumentLookup? FindRequirementSet(string id);

    /// <summary>Equipment libraries that the workspace's settings offer to every technique.</summary>
    IReadOnlyList<DocumentLookup> SharedLibraries { get; }

    /// <summary>Requirement sets for techniques that name none.</summary>
    IReadOnlyList<string> DefaultRequirements { get; }

    /// <summary>Requirement sets that the caller adds to every technique.</summary>
    IReadOnlyList<string> AddedRequirements { get; }
}
