using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Workspaces;

namespace TechLint.LanguageServer.Session;

/// <summary>One file of a workspace, open or not, with the address that the client knows it by.</summary>
internal sealed record WorkspaceFile(WorkspaceView View, string Path, DocumentUri Uri, OpenDocument? Open)
{
    /// <summary>The document to show findings in: the open one, else the file's text as it was read; null where it cannot be read.</summary>
    public OpenDocument? Document => Open
        ?? (View.Workspace.SourceOf(Path) is { } source ? OpenDocument.First(Uri, null, source.Text, View.Home with { Path = Path }) : null);
}

/// <summary>A workspace at one moment.</summary>
/// <param name="IsWhole">Whether all its files are the client's business: it opened the folder, or a settings file makes it a workspace. Else
/// the folder is merely where an open document lies.</param>
/// <param name="Open">Its open documents by path.</param>
internal sealed record WorkspaceView(WorkspaceHome Home, IWorkspace Workspace, bool IsWhole, IReadOnlyDictionary<string, OpenDocument> Open);

internal static class WorkspaceFiles
{
    /// <summary>In order of workspace and path; each address once.</summary>
    public static IEnumerable<WorkspaceFile> Of(IEnumerable<WorkspaceView> views)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var view in views)
        {
            foreach (var path in view.IsWhole ? view.Workspace.Files : (IEnumerable<string>)view.Open.Keys.Order(StringComparer.Ordinal))
            {
                var open = view.Open.GetValueOrDefault(path);
                var uri = open?.Uri ?? (view.Home.Root is { } root ? DocumentUri.FromPath(System.IO.Path.Combine(root, path)) : null);
                if (uri is not null && seen.Add(uri.Normal)) yield return new WorkspaceFile(view, path, uri, open);
            }
        }
    }
}
