namespace TechLint.Syntax;

/// <summary>
/// Ceilings that keep the time and memory of one reading bounded, whatever the text. Each is far above what a written
/// technique needs; where one is reached, a problem <c>limit-reached</c> names it.
/// </summary>
public static class ReadingLimits
{
    /// <summary>Characters (UTF-16 code units) of a text; a longer one is not read.</summary>
    public const int Length = 4 * 1024 * 1024;

    /// <summary>Characters of one line; a text with a longer one is not read.</summary>
    public const int LineLength = 64 * 1024;

    /// <summary>Collections inside one another.</summary>
    public const int Depth = 64;

    /// <summary>Nodes of one tree; what follows is left out.</summary>
    public const int Nodes = 250_000;

    /// <summary>Nodes that all aliases of a text stand for together, each counted as often as it is repeated.</summary>
    public const int AliasedNodes = 20_000;

    /// <summary>Problems told of one text.</summary>
    public const int Problems = 100;
}
