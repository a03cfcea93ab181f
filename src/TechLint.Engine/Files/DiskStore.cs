using TechLint.Model.Documents;
using TechLint.Syntax;

namespace TechLint.Engine.Files;

/// <summary>
/// The files below one folder, and nothing else: a link that leads out of it is refused. Reading never throws.
/// </summary>
public sealed class DiskStore : IFileStore
{
    /// <summary>No technique is longer; a log or an image that took its name is.</summary>
    public const int LargestFile = 4 * 1024 * 1024;

    private readonly string realRoot;

    /// <param name="root">The root of the workspace, made a full path here.</param>
    public DiskStore(string root)
    {
        Root = Path.GetFullPath(root);
        realRoot = RealPath.Of(Root) ?? Root;
    }

    public string Root { get; }

    /// <summary>A file that the caller named itself, wherever it lies.</summary>
    /// <param name="fullPath">Where it lies.</param>
    /// <param name="shownPath">The path that its text is to carry.</param>
    public static FileText ReadNamed(string fullPath, string shownPath)
    {
        if (fullPath.Contains('\0', StringComparison.Ordinal)) return new FileText(null, LookupFault.NotFound);
        if (RealPath.Of(fullPath) is not { } place) return new FileText(null, LookupFault.Unreadable);
        if (Directory.Exists(place)) return new FileText(null, LookupFault.NotAFile);
        return File.Exists(place) ? Open(place, shownPath) : new FileText(null, LookupFault.NotFound);
    }

    public FileText Read(string path)
    {
        var fault = Locate(path, out var place);
        return fault == LookupFault.None ? Open(place, path) : new FileText(null, fault);
    }

    /// <summary>Whether a file is text of the other encoding that is read, by its byte order mark.</summary>
    public bool IsUtf16(string path)
    {
        if (Locate(path, out var place) != LookupFault.None) return false;
        try
        {
            return ReadAtMost(place, 2) is [0xFF, 0xFE] or [0xFE, 0xFF];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Whether a file could be opened, without reading it.</summary>
    public LookupFault Probe(string path)
    {
        var fault = Locate(path, out var place);
        if (fault != LookupFault.None) return fault;
        try
        {
            if (new FileInfo(place).Length > 0) File.OpenHandle(place).Dispose();
            return LookupFault.None;
        }
        catch (Exception fault2) when (fault2 is IOException or UnauthorizedAccessException)
        {
            return FaultOf(fault2);
        }
    }

    public IReadOnlyList<string> List() => Walk("").Files;

    /// <summary>As <see cref="List"/>, below one folder, with what was left out on the way.</summary>
    public FolderListing Walk(string folder) => FolderListing.Of(Root, folder, intoNestedWorkspaces: false);

    private static LookupFault FaultOf(Exception fault) =>
        fault is FileNotFoundException or DirectoryNotFoundException ? LookupFault.NotFound : LookupFault.Unreadable;

    private LookupFault Locate(string path, out string place)
    {
        place = "";
        if (path.Contains('\0', StringComparison.Ordinal)) return LookupFault.NotFound;
        if (path.Length == 0) return LookupFault.NotAFile;
        if (!RelativePath.IsPlain(path)) return LookupFault.OutsideWorkspace;
        if (RealPath.Of(realRoot, path) is not { } real) return LookupFault.Unreadable;
        if (!RealPath.IsWithin(realRoot, real)) return LookupFault.OutsideWorkspace;
        place = real;
        if (Directory.Exists(real)) return LookupFault.NotAFile;
        return File.Exists(real) ? LookupFault.None : LookupFault.NotFound;
    }

    private static FileText Open(string place, string path)
    {
        try
        {
            var length = new FileInfo(place).Length;
            if (length > LargestFile) return new FileText(null, LookupFault.TooLarge);
            // Pipes and devices have no length, and reading one could wait for ever: they are taken for empty files.
            var bytes = length == 0 ? [] : ReadAtMost(place, LargestFile + 1);
            if (bytes.Length > LargestFile) return new FileText(null, LookupFault.TooLarge);
            return TextDecoding.Decode(bytes) is { } text
                ? new FileText(new SourceText(path, text), LookupFault.None)
                : new FileText(null, LookupFault.NotText);
        }
        catch (Exception fault2) when (fault2 is IOException or UnauthorizedAccessException)
        {
            return new FileText(null, FaultOf(fault2));
        }
    }

    private static byte[] ReadAtMost(string place, int most)
    {
        using var handle = File.OpenHandle(place);
        // One more than the length tells a file that grew meanwhile.
        var buffer = new byte[(int)Math.Min(RandomAccess.GetLength(handle) + 1, most)];
        var count = 0;
        while (count < buffer.Length)
        {
            var read = RandomAccess.Read(handle, buffer.AsSpan(count), count);
            if (read == 0) break;
            count += read;
        }

        return buffer[..count];
    }
}
