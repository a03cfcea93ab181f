using TechLint.LanguageServer.Documents;

namespace TechLint.LanguageServer.Workspaces;

/// <summary>Where a document belongs: a workspace and its path in it.</summary>
/// <param name="Key">Tells workspaces apart.</param>
/// <param name="Root">The workspace's folder; null for a document that is no file on this machine, which is a workspace of its own.</param>
/// <param name="Path">Relative to the root, with forward slashes.</param>
internal sealed record WorkspaceHome(string Key, string? Root, string Path)
{
    /// <summary>Whether the root was chosen as one: it has a settings file or is a folder of the client. Else it is just where a document lies, and
    /// what else lies there is nobody's business.</summary>
    public bool IsWorkspace { get; init; }

    /// <summary>
    /// The nearest folder upwards with a settings file, else the innermost of the client's folders that holds the document, else the
    /// document's own folder.
    /// </summary>
    public static WorkspaceHome Of(DocumentUri document, IEnumerable<string> clientFolders, IWorkspaces workspaces)
    {
        if (document.Path is not { } file || System.IO.Path.GetDirectoryName(file) is not { } folder)
        {
            return new WorkspaceHome(document.Normal, null, document.FileName);
        }

        var chosen = workspaces.FindRoot(folder)
            ?? clientFolders.Where(candidate => PathWithin(candidate, file) is not null).MaxBy(candidate => candidate.Length);
        var root = chosen ?? folder;
        return PathWithin(root, file) is { } path
            ? new WorkspaceHome(root, root, path) { IsWorkspace = chosen is not null }
            : new WorkspaceHome(folder, folder, document.FileName);
    }

    /// <summary>A file's path relative to a folder, with forward slashes; null where it is not inside.</summary>
    public static string? PathWithin(string folder, string file)
    {
        var relative = System.IO.Path.GetRelativePath(folder, file).Replace('\\', '/');
        return relative is "." or ".." || relative.StartsWith("../", StringComparison.Ordinal) || System.IO.Path.IsPathRooted(relative)
            ? null
            : relative;
    }
}
