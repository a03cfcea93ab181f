using TechLint.Engine.Files;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>
/// The workspace as it stood at one moment: texts, settings, date. Immutable to its readers; files are read from the store
/// the first time they are asked for and kept. Thread-safe.
/// </summary>
public sealed class Snapshot
{
    public static Snapshot Open(IFileStore store, WorkspaceOptions options) => throw new NotSupportedException();

    public DateOnly AsOf => throw new NotSupportedException();

    /// <summary>Every file of the workspace that can be judged, in ordinal order; open texts included.</summary>
    public IReadOnlyList<string> Files => throw new NotSupportedException();

    /// <summary>This workspace with one text replaced (an open editor's), or given back to the store where null.
    /// Trees and studies of everything else are shared.</summary>
    public Snapshot With(string path, SourceText? text) => throw new NotSupportedException();

    /// <summary>This workspace with the named files (all where empty) read anew from the store.</summary>
    public Snapshot Refreshed(IReadOnlyCollection<string> paths) => throw new NotSupportedException();

    /// <summary>The tree of a file, or null where it cannot be read.</summary>
    public SyntaxTree? TreeOf(string path) => throw new NotSupportedException();

    /// <summary>The files whose findings may change when this one does (techniques that use a library or set), itself left out.</summary>
    public IReadOnlyList<string> DependantsOf(string path) => throw new NotSupportedException();
}
