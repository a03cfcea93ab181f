using System.Collections.Concurrent;
using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Syntax;

namespace TechLint.LanguageServer.Workspaces;

/// <summary>The engine, as the session sees it.</summary>
internal sealed class EngineWorkspaces : IWorkspaces
{
    public string? FindRoot(string folder)
    {
        var root = RootFinder.Find(folder);
        return File.Exists(Path.Combine(root, FormatKinds.SettingsName)) ? root : null;
    }

    public IWorkspace Open(string? root, DateOnly today) =>
        new EngineWorkspace(Snapshot.Open(root is null ? new NoFiles() : new DiskStore(root), WorkspaceOptions.For(today)), new(StringComparer.Ordinal));

    /// <param name="known">
    /// Findings by file, each with the tree that it was found in. Diagnostics, actions and pulled reports share them, and so do the workspaces
    /// before and after an edit of a technique: nothing else rests on one.
    /// </param>
    private sealed class EngineWorkspace(Snapshot snapshot, ConcurrentDictionary<string, (SyntaxTree Tree, FileFindings Found)> known) : IWorkspace
    {
        public Snapshot? Snapshot => snapshot;

        public IReadOnlyList<string> Files => snapshot.Files;

        public IWorkspace With(string path, SourceText? text) => new EngineWorkspace(snapshot.With(path, text), KnownAfter([path]));

        public IWorkspace Refreshed(IReadOnlyCollection<string> paths) => new EngineWorkspace(snapshot.Refreshed(paths), KnownAfter(paths));

        public SourceText? SourceOf(string path) => snapshot.TreeOf(path)?.Source;

        public bool IsKnown(string path) => KnownOf(path, snapshot.TreeOf(path)) is not null;

        public FileFindings Check(string path, CancellationToken cancellation)
        {
            var tree = snapshot.TreeOf(path);
            if (KnownOf(path, tree) is { } before) return before;
            var run = Checker.Check(snapshot, [path], jobs: 1, cancellation);
            var found = new FileFindings(
                [.. run.Findings.Where(one => one.Counts && string.Equals(one.Finding.File, path, StringComparison.Ordinal)).Select(one => one.Finding)],
                run.Sources);
            if (tree is not null) known[path] = (tree, found);
            return found;
        }

        private FileFindings? KnownOf(string path, SyntaxTree? tree) =>
            tree is not null && known.TryGetValue(path, out var before) && ReferenceEquals(before.Tree, tree) ? before.Found : null;

        private ConcurrentDictionary<string, (SyntaxTree Tree, FileFindings Found)> KnownAfter(IReadOnlyCollection<string> changed) =>
            changed.Count > 0 && changed.All(path => FormatKinds.Of(path) == FormatKind.Technique) ? known : new(StringComparer.Ordinal);

        public IReadOnlyList<string> DependantsOf(string path) => snapshot.DependantsOf(path);

        public HoverText? HoverAt(string path, int offset) => Hover.At(snapshot, path, offset);
    }

    /// <summary>The store of a document that is no file: it has no neighbours.</summary>
    private sealed class NoFiles : IFileStore
    {
        public FileText Read(string path) => new(null, LookupFault.NotFound);

        public IReadOnlyList<string> List() => [];
    }
}
