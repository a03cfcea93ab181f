using System.Collections.Immutable;
using TechLint.Model.Shape;

namespace TechLint.Engine.Files;

/// <summary>
/// The judged files below a folder. Links to folders are not followed (what lies inside is found at its own place, and circles end);
/// folders whose names start with a dot are the business of other tools.
/// </summary>
/// <param name="Files">Relative to the root, in ordinal order.</param>
/// <param name="NestedWorkspaces">Folders with settings of their own that were left out.</param>
/// <param name="Unreadable">Folders that could not be listed.</param>
public sealed record FolderListing(ImmutableArray<string> Files, ImmutableArray<string> NestedWorkspaces, ImmutableArray<string> Unreadable)
{
    internal static FolderListing Of(string root, string folder, bool intoNestedWorkspaces)
    {
        List<string> files = [], nested = [], unreadable = [];
        var waiting = new Stack<string>([folder]);
        while (waiting.TryPop(out var here))
        {
            if (!TryList(Path.Combine(root, here), out var entries))
            {
                unreadable.Add(here);
                continue;
            }

            if (!intoNestedWorkspaces && here.Length > 0 && HasSettings(entries))
            {
                nested.Add(here);
                continue;
            }

            foreach (var entry in entries)
            {
                var path = here.Length == 0 ? entry.Name : here + "/" + entry.Name;
                if (!entry.Attributes.HasFlag(FileAttributes.Directory))
                {
                    if (FormatKinds.Of(path) is not null) files.Add(path);
                }
                else if (!entry.Name.StartsWith('.') && !entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
                {
                    waiting.Push(path);
                }
            }
        }

        return new FolderListing(Sorted(files), Sorted(nested), Sorted(unreadable));
    }

    private static bool HasSettings(FileSystemInfo[] entries) => entries.Any(entry =>
        string.Equals(entry.Name, FormatKinds.SettingsName, StringComparison.Ordinal) && !entry.Attributes.HasFlag(FileAttributes.Directory));

    private static ImmutableArray<string> Sorted(List<string> paths) => [.. paths.Order(StringComparer.Ordinal)];

    private static bool TryList(string folder, out FileSystemInfo[] entries)
    {
        try
        {
            entries = new DirectoryInfo(folder).GetFileSystemInfos();
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            entries = [];
            return false;
        }
    }
}
