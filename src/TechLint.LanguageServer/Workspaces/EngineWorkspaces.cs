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
        new EngineWorkspace(Snapshot.Open(root is null ? new NoFiles() : new DiskStore(root), WorkspaceOptions.For(today)));

    private sealed class EngineWorkspace(Snapshot snapshot) : IWorkspace
    {
        /// <summary>A snapshot stays as it is, and so do its findings: diagnostics, actions and pulled reports share them.</summary>
        private readonly System.Collections.Concurrent.ConcurrentDictionary<string, FileFindings> known = new(StringComparer.Ordinal);

        public Snapshot? Snapshot => snapshot;

        public IWorkspace With(string path, SourceText? text) => new EngineWorkspace(snapshot.With(path, text));

        public IWorkspace Refreshed(IReadOnlyCollection<string> paths) => new EngineWorkspace(snapshot.Refreshed(paths));

        public FileFindings Check(string path, CancellationToken cancellation)
        {
            if (known.TryGetValue(path, out var before)) return before;
            var run = Checker.Check(snapshot, [path], Environment.ProcessorCount, cancellation);
            return known[path] = new FileFindings(
                [.. run.Findings.Where(found => found.Counts && string.Equals(found.Finding.File, path, StringComparison.Ordinal))
                    .Select(found => found.Finding)],
                run.Sources);
        }

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
