namespace TechLint.Cli;

/// <summary>A result written to a file: whole, or not at all.</summary>
internal static class OutputFile
{
    /// <returns>Whether it was written.</returns>
    public static bool TryWrite(string path, Action<TextWriter> content)
    {
        // A device is written to; putting a file in its place would break the machine.
        if (path.StartsWith("/dev/", StringComparison.Ordinal)) return TryWriteTo(path, FileMode.Open, content);
        var folder = Path.GetDirectoryName(path) ?? "";
        var draft = Path.Combine(folder, $".{Path.GetFileName(path)}.{Environment.ProcessId}.tmp");
        if (Directory.Exists(path) || !TryWriteTo(draft, FileMode.Create, content)) return false;
        try
        {
            // A file that is replaced keeps who may read it.
            if (!OperatingSystem.IsWindows() && File.Exists(path)) File.SetUnixFileMode(draft, File.GetUnixFileMode(path));
            File.Move(draft, path, overwrite: true);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Remove(draft);
            return false;
        }
    }

    private static bool TryWriteTo(string path, FileMode mode, Action<TextWriter> content)
    {
        try
        {
            using var stream = new FileStream(path, mode, FileAccess.Write);
            using var writer = Terminal.Writer(stream);
            content(writer);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            if (mode == FileMode.Create) Remove(path);
            return false;
        }
    }

    private static void Remove(string draft)
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The result was not written, and that is said; a draft left behind does no harm.
        }
    }
}
