namespace TechLint.Engine.Files;

/// <summary>Paths inside a workspace, as text alone: no disk is asked, so every system gives the same answer.</summary>
public static class RelativePath
{
    /// <summary>
    /// The plain path, relative to the workspace root, that <paramref name="path"/> means when it stands in <paramref name="fromFile"/>;
    /// null where it leads out of the workspace. Back slashes part folders too: techniques travel between systems.
    /// </summary>
    /// <param name="fromFile">Relative to the root, plain.</param>
    /// <param name="path">As an author wrote it, relative to the folder of <paramref name="fromFile"/>.</param>
    public static string? Resolve(string fromFile, string path)
    {
        if (IsRooted(path)) return null;
        var parts = new List<string>();
        var folder = fromFile.LastIndexOf('/');
        return (folder < 0 || Walk(fromFile[..folder], parts)) && Walk(path.Replace('\\', '/'), parts) ? string.Join('/', parts) : null;
    }

    /// <summary>Whether a path can only mean a place inside the root: relative, without steps upwards.</summary>
    public static bool IsPlain(string path) =>
        path.Length > 0 && !IsRooted(path) && !path.Split('/').Any(part => part is "" or "." or "..");

    /// <summary>Whether <paramref name="path"/> is <paramref name="folder"/> or lies below it; an empty folder is the root.</summary>
    public static bool IsWithin(string folder, string path) =>
        folder.Length == 0 || string.Equals(path, folder, StringComparison.Ordinal)
        || (path.StartsWith(folder, StringComparison.Ordinal) && path[folder.Length] == '/');

    private static bool IsRooted(string path) =>
        path.StartsWith('/') || path.StartsWith('\\') || (path.Length > 1 && path[1] == ':' && char.IsAsciiLetter(path[0]));

    private static bool Walk(string path, List<string> parts)
    {
        foreach (var part in path.Split('/'))
        {
            if (part is "" or ".") continue;
            if (part is not "..") parts.Add(part);
            else if (parts.Count == 0) return false;
            else parts.RemoveAt(parts.Count - 1);
        }

        return true;
    }
}
