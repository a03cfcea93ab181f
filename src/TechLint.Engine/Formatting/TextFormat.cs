using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Syntax.Formatting;

namespace TechLint.Engine.Formatting;

/// <summary>The one formatting of command line and editors.</summary>
public static class TextFormat
{
    /// <summary>The formatted text; null where the text is no sound YAML, which <c>check</c> then explains.</summary>
    /// <param name="source">A file that TechLint judges, by its path.</param>
    /// <param name="reorder">Put keys in the canonical order too.</param>
    public static string? Of(SourceText source, bool reorder)
    {
        var tree = YamlReader.Read(source);
        if (reorder && FormatKinds.Of(source.Path) is { } kind)
        {
            // In order first, then spaced: rows that the author lined up stand together again.
            tree = YamlReader.Read(new SourceText(source.Path, KeyOrder.Apply(tree, FormatShapes.Of(kind))));
        }

        return Formatter.Format(tree);
    }
}
