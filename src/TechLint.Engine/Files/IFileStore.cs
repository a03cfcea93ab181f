using TechLint.Model.Documents;
using TechLint.Syntax;

namespace TechLint.Engine.Files;

/// <summary>A file's text, or why there is none.</summary>
public sealed record FileText(SourceText? Source, LookupFault Fault);

/// <summary>
/// Where texts come from. Paths are relative to the workspace root, forward slashes, already made plain (no <c>..</c> left
/// inside). A store never throws: what cannot be read is a fault.
/// </summary>
public interface IFileStore
{
    FileText Read(string path);

    /// <summary>Every technique, library, requirement set and settings file of this workspace, in ordinal order; nested
    /// workspaces (folders with a <c>techlint.yaml</c> of their own) left out.</summary>
    IReadOnlyList<string> List();
}
