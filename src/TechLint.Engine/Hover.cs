using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>What an editor shows when the pointer rests on something: Markdown, and the characters it speaks of.</summary>
public sealed record HoverText(string Markdown, TextSpan Span);

public static class Hover
{
    /// <summary>The meaning of a key, or the computed meaning of a quantity; null where there is nothing to say.</summary>
    public static HoverText? At(Snapshot snapshot, string path, int offset) => throw new NotSupportedException();
}
