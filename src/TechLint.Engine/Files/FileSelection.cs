using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Model.Documents;

namespace TechLint.Engine.Files;

/// <summary>The files to judge in one workspace.</summary>
/// <param name="Store">Its files; <see cref="DiskStore.Root"/> is the workspace's root.</param>
/// <param name="Files">Relative to the root, in ordinal order, each once.</param>
public sealed record SelectedWorkspace(DiskStore Store, ImmutableArray<string> Files);

public enum SelectionFault
{
    NotFound,

    /// <summary>A file of another kind than those that are judged.</summary>
    UnknownKind,

    OutsideRoot,

    /// <summary>A folder or pattern with nothing in it to judge.</summary>
    NothingMatched,

    Unreadable,

    /// <summary>A name is needed for what comes from standard input.</summary>
    Unnamed,
}

/// <summary>A path of the call that cannot be used.</summary>
public sealed record SelectionProblem(string Path, SelectionFault Fault);

/// <summary>The text on standard input, as the file that it stands for.</summary>
public sealed record StandardInputPlace(string Root, string Path);

/// <summary>
/// What the paths of a call mean: files, folders, patterns and standard input, by workspace. A folder's nested workspaces are left
/// out, as they have rules of their own; naming one, or a file in it, chooses it.
/// </summary>
/// <param name="NestedWorkspaces">Full paths of those left out.</param>
public sealed record FileSelection(
    ImmutableArray<SelectedWorkspace> Workspaces, ImmutableArray<SelectionProblem> Problems, ImmutableArray<string> NestedWorkspaces,
    StandardInputPlace? StandardInput)
{
    public const string StandardInputName = "-";

    /// <param name="workingFolder">The full path that relative ones start from.</param>
    /// <param name="paths">As given; empty stands for the root given, else the working folder.</param>
    /// <param name="root">The root given by the caller; else each path finds its own.</param>
    /// <param name="standardInputPath">The file that <c>-</c> stands for.</param>
    public static FileSelection Of(string workingFolder, IReadOnlyList<string> paths, string? root, string? standardInputPath)
    {
        var selector = new Selector(workingFolder, root is null ? null : Full(root, workingFolder), standardInputPath);
        if (paths.Count == 0) selector.AddFolder(root ?? ".", Full(root ?? ".", workingFolder));
        foreach (var path in paths) selector.Add(path);
        return selector.Selection();
    }

    // One folder has one name, with or without a slash behind it.
    private static string Full(string path, string workingFolder) => Path.TrimEndingDirectorySeparator(Path.GetFullPath(path, workingFolder));

    private sealed class Selector(string workingFolder, string? givenRoot, string? standardInputPath)
    {
        private readonly SortedDictionary<string, (DiskStore Store, SortedSet<string> Files)> chosen = new(StringComparer.Ordinal);
        private readonly List<SelectionProblem> problems = [];
        private readonly SortedSet<string> nested = new(StringComparer.Ordinal);
        private StandardInputPlace? standardInput;

        public void Add(string path)
        {
            if (string.Equals(path, StandardInputName, StringComparison.Ordinal))
            {
                AddStandardInput();
                return;
            }

            if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            {
                Refuse(path, SelectionFault.NotFound);
                return;
            }

            var full = Full(path, workingFolder);
            // A name with a star in it is taken for itself where there is such a file.
            if (Directory.Exists(full)) AddFolder(path, full);
            else if (File.Exists(full)) AddFile(path, full);
            else if (Glob.IsPattern(path)) AddPattern(path, full);
            else Refuse(path, SelectionFault.NotFound);
        }

        public void AddFolder(string path, string full)
        {
            if (WorkspaceOf(path, full) is not { } workspace) return;
            var listing = workspace.Store.Walk(Relative(workspace.Store, full));
            nested.UnionWith(listing.NestedWorkspaces.Select(folder => Path.Combine(workspace.Store.Root, folder)));
            foreach (var folder in listing.Unreadable) Refuse(Path.Combine(path, folder), SelectionFault.Unreadable);
            if (listing.Files.IsEmpty && listing.Unreadable.IsEmpty) Refuse(path, SelectionFault.NothingMatched);
            workspace.Files.UnionWith(listing.Files);
        }

        public FileSelection Selection() => new(
            [.. chosen.Values.Where(one => one.Files.Count > 0).Select(one => new SelectedWorkspace(one.Store, [.. one.Files]))],
            [.. problems], [.. nested], standardInput);

        private void AddStandardInput()
        {
            var path = standardInputPath ?? "";
            if (FormatKinds.Of(path) is null)
            {
                Refuse(path.Length == 0 ? StandardInputName : path, path.Length == 0 ? SelectionFault.Unnamed : SelectionFault.UnknownKind);
                return;
            }

            var full = Full(path, workingFolder);
            if (WorkspaceOf(path, Path.GetDirectoryName(full) ?? full, full) is not { } workspace) return;
            standardInput = new StandardInputPlace(workspace.Store.Root, Relative(workspace.Store, full));
            workspace.Files.Add(standardInput.Path);
        }

        private void AddFile(string path, string full)
        {
            if (FormatKinds.Of(full) is null)
            {
                Refuse(path, SelectionFault.UnknownKind);
                return;
            }

            if (WorkspaceOf(path, Path.GetDirectoryName(full) ?? full, full) is not { } workspace) return;
            var relative = Relative(workspace.Store, full);
            switch (workspace.Store.Probe(relative))
            {
                case LookupFault.None:
                    workspace.Files.Add(relative);
                    break;
                case LookupFault.OutsideWorkspace:
                    Refuse(path, SelectionFault.OutsideRoot);
                    break;
                case LookupFault.NotFound:
                    Refuse(path, SelectionFault.NotFound);
                    break;
                default:
                    Refuse(path, SelectionFault.Unreadable);
                    break;
            }
        }

        // A pattern means the files it names, wherever they belong, just as if the shell had written them out.
        private void AddPattern(string path, string full)
        {
            var pattern = full.Replace(Path.DirectorySeparatorChar, '/');
            var parts = pattern.Split('/');
            var plain = parts.TakeWhile(part => !Glob.IsPattern(part)).Count();
            var folder = string.Join('/', parts[..plain]);
            var rest = string.Join('/', parts[plain..]);
            var start = folder.Length == 0 ? "/" : folder;
            var matched = Directory.Exists(start)
                ? [.. FolderListing.Of(start, "", intoNestedWorkspaces: true).Files.Where(file => Glob.Matches(rest, file))]
                : ImmutableArray<string>.Empty;
            if (matched.IsEmpty) Refuse(path, SelectionFault.NothingMatched);
            foreach (var file in matched) AddFile(path, Path.Combine(start, file));
        }

        private (DiskStore Store, SortedSet<string> Files)? WorkspaceOf(string path, string folder, string? file = null)
        {
            var root = givenRoot ?? RootFinder.Find(folder);
            if (!RealPath.IsWithin(root, file ?? folder))
            {
                Refuse(path, SelectionFault.OutsideRoot);
                return null;
            }

            if (!chosen.TryGetValue(root, out var workspace))
            {
                workspace = (new DiskStore(root), new SortedSet<string>(StringComparer.Ordinal));
                chosen.Add(root, workspace);
            }

            return workspace;
        }

        private void Refuse(string path, SelectionFault fault) => problems.Add(new SelectionProblem(path, fault));

        private static string Relative(DiskStore store, string full)
        {
            var relative = Path.GetRelativePath(store.Root, full).Replace(Path.DirectorySeparatorChar, '/');
            return string.Equals(relative, ".", StringComparison.Ordinal) ? "" : relative;
        }
    }
}
