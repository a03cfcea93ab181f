namespace TechLint.LanguageServer.Documents;

/// <summary>The unit in which a client counts characters.</summary>
internal enum PositionEncoding { Utf16, Utf8, Utf32 }

internal static class PositionEncodings
{
    /// <summary>
    /// The client's first choice among UTF-8 and UTF-16; UTF-32 where it offers nothing else; UTF-16, which the protocol makes
    /// every client understand, where it offers nothing known.
    /// </summary>
    public static PositionEncoding Negotiate(IEnumerable<string?>? offered)
    {
        var utf32 = false;
        foreach (var name in offered ?? [])
        {
            if (name is "utf-8") return PositionEncoding.Utf8;
            if (name is "utf-16") return PositionEncoding.Utf16;
            utf32 |= name is "utf-32";
        }

        return utf32 ? PositionEncoding.Utf32 : PositionEncoding.Utf16;
    }

    public static string Name(this PositionEncoding encoding) => encoding switch
    {
        PositionEncoding.Utf8 => "utf-8",
        PositionEncoding.Utf32 => "utf-32",
        _ => "utf-16",
    };
}
