namespace TechLint.Engine.Files;

/// <summary>Where a path leads once every symbolic link on the way is followed.</summary>
internal static class RealPath
{
    /// <summary>As many as Linux follows before it calls a path a loop.</summary>
    private const int MostLinks = 40;

    /// <summary>The place behind a full path; null where the links run in a circle.</summary>
    public static string? Of(string fullPath)
    {
        var top = Path.GetPathRoot(fullPath) ?? "";
        return Of(top, fullPath[top.Length..]);
    }

    /// <summary>The place of <paramref name="path"/> below <paramref name="folder"/>, which is real already; it may lie elsewhere.</summary>
    public static string? Of(string folder, string path)
    {
        var left = new Stack<string>();
        Push(left, path);
        var links = 0;
        var here = folder;
        while (left.TryPop(out var part))
        {
            if (part is "" or ".") continue;
            if (part is "..")
            {
                here = Path.GetDirectoryName(here) ?? here;
                continue;
            }

            var next = Path.Combine(here, part);
            if (LinkAt(next) is not { } target)
            {
                here = next;
                continue;
            }

            if (++links > MostLinks) return null;
            var top = Path.GetPathRoot(target) ?? "";
            if (top.Length > 0) here = top;
            Push(left, target[top.Length..]);
        }

        return here;
    }

    public static bool IsWithin(string folder, string path)
    {
        var stem = Path.TrimEndingDirectorySeparator(folder);
        return string.Equals(path, folder, StringComparison.Ordinal) || string.Equals(path, stem, StringComparison.Ordinal)
            || path.StartsWith(Path.EndsInDirectorySeparator(stem) ? stem : stem + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }

    private static void Push(Stack<string> left, string path)
    {
        var parts = path.Split(Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar);
        for (var i = parts.Length - 1; i >= 0; i--) left.Push(parts[i]);
    }

    private static string? LinkAt(string path)
    {
        try
        {
            return new FileInfo(path).LinkTarget;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What cannot be looked at is no link; opening it will say why.
            return null;
        }
    }
}
