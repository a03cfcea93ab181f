namespace TechLint.LanguageServer.Documents;

/// <summary>
/// A document's address. Clients spell one file in several ways (escaped or not, drive letters in either case); two addresses
/// are equal when their normal forms are. What goes back to a client is its own spelling.
/// </summary>
internal sealed class DocumentUri : IEquatable<DocumentUri>
{
    private DocumentUri(string spelling, string normal, string? path, string fileName)
    {
        Spelling = spelling;
        Normal = normal;
        Path = path;
        FileName = fileName;
    }

    /// <summary>As the client wrote it.</summary>
    public string Spelling { get; }

    public string Normal { get; }

    /// <summary>The absolute path on this machine, plain, with this system's separators; null where it is no file here.</summary>
    public string? Path { get; }

    /// <summary>The last part of the address, decoded.</summary>
    public string FileName { get; }

    public static DocumentUri? Parse(string? uri) => Parse(uri, OperatingSystem.IsWindows());

    /// <summary>Null for a text that is no address at all.</summary>
    public static DocumentUri? Parse(string? uri, bool windows)
    {
        if (string.IsNullOrWhiteSpace(uri)) return null;
        var colon = uri.IndexOf(':', StringComparison.Ordinal);
        if (colon < 2 || !uri.AsSpan(0, colon).ContainsOnlySchemeCharacters()) return null;
        var scheme = uri[..colon].ToLowerInvariant();
        var rest = uri[(colon + 1)..];
        if (scheme is not "file")
        {
            var opaque = Uri.UnescapeDataString(rest);
            return new DocumentUri(uri, scheme + ":" + opaque, null, LastPart(opaque));
        }

        var host = "";
        if (rest.StartsWith("//", StringComparison.Ordinal))
        {
            var slash = rest.IndexOf('/', 2);
            host = slash < 0 ? rest[2..] : rest[2..slash];
            rest = slash < 0 ? "/" : rest[slash..];
        }

        if (string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)) host = "";
        var path = PlainPath(Uri.UnescapeDataString(rest).Replace('\\', '/'));
        return new DocumentUri(uri, "file://" + host.ToLowerInvariant() + Escape(path), LocalPath(host, path, windows), LastPart(path));
    }

    /// <summary>The address of a file on this machine.</summary>
    public static DocumentUri? FromPath(string path)
    {
        var plain = path.Replace('\\', '/');
        return Parse(plain.StartsWith("//", StringComparison.Ordinal) ? "file:" + Escape(plain)
            : "file://" + (plain.StartsWith('/') ? "" : "/") + Escape(plain));
    }

    public bool Equals(DocumentUri? other) => other is not null && string.Equals(Normal, other.Normal, StringComparison.Ordinal);

    public override bool Equals(object? obj) => Equals(obj as DocumentUri);

    public override int GetHashCode() => string.GetHashCode(Normal, StringComparison.Ordinal);

    public override string ToString() => Normal;

    /// <summary>One leading slash, no empty parts, no dots left, a drive letter in lower case.</summary>
    private static string PlainPath(string path)
    {
        var parts = new List<string>();
        foreach (var part in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (part is "..")
            {
                if (parts.Count > 0 && !(parts.Count == 1 && IsDrive(parts[0]))) parts.RemoveAt(parts.Count - 1);
            }
            else if (part is not ".")
            {
                parts.Add(parts.Count == 0 && IsDrive(part) ? part.ToLowerInvariant() : part);
            }
        }

        return "/" + string.Join('/', parts);
    }

    private static string? LocalPath(string host, string path, bool windows)
    {
        if (path.Contains('\0', StringComparison.Ordinal)) return null;
        if (!windows) return host.Length == 0 ? path : null;
        if (host.Length > 0) return @"\\" + host + path.Replace('/', '\\');
        return path.Length >= 3 && IsDrive(path.Substring(1, 2)) && (path.Length == 3 || path[3] == '/')
            ? path[1..].Replace('/', '\\') + (path.Length == 3 ? "\\" : "")
            : null;
    }

    private static bool IsDrive(string part) => part.Length == 2 && char.IsAsciiLetter(part[0]) && part[1] == ':';

    private static string LastPart(string path) => path[(path.LastIndexOf('/') + 1)..];

    private static string Escape(string path) =>
        string.Join('/', path.Split('/').Select(part => IsDrive(part) ? part : Uri.EscapeDataString(part)));
}

internal static class SchemeCharacters
{
    /// <summary>RFC 3986, section 3.1.</summary>
    public static bool ContainsOnlySchemeCharacters(this ReadOnlySpan<char> scheme)
    {
        if (!char.IsAsciiLetter(scheme[0])) return false;
        foreach (var character in scheme)
        {
            if (!char.IsAsciiLetterOrDigit(character) && character is not ('+' or '-' or '.')) return false;
        }

        return true;
    }
}
