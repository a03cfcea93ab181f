namespace TechLint.Syntax;

/// <summary>A file's text as it stands: a byte order mark stays as its first character, line ends stay as they are.</summary>
/// <param name="path">Path relative to the workspace root, with forward slashes.</param>
/// <param name="text">The decoded text.</param>
public sealed class SourceText(string path, string text)
{
    private LineMap? lines;

    public string Path { get; } = path;

    public string Text { get; } = text;

    public LineMap Lines => lines ??= new LineMap(Text);

    public ReadOnlySpan<char> Slice(TextSpan span) => Text.AsSpan(span.Start, span.Length);
}
