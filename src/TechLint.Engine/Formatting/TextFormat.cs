using System.Collections.Immutable;
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
    public static string? Of(SourceText source, bool reorder) => Of(YamlReader.Read(source), reorder);

    /// <summary>The same of a text that is read already.</summary>
    public static string? Of(SyntaxTree tree, bool reorder)
    {
        if (reorder && FormatKinds.Of(tree.Source.Path) is { } kind)
        {
            // In order first, then spaced: rows that the author lined up stand together again.
            tree = YamlReader.Read(new SourceText(tree.Source.Path, KeyOrder.Apply(tree, FormatShapes.Of(kind))));
        }

        return Formatter.Format(tree);
    }

    /// <summary>
    /// Of the whole text's formatting the edits within a range; null where the text has none. Where these alone would change what the text says
    /// (a line pushed in, its neighbours left) only those inside lines are kept: levels go together or stay.
    /// </summary>
    public static ImmutableArray<TextEdit>? Within(SyntaxTree tree, TextSpan range)
    {
        if (Formatter.Edits(tree) is not { } all) return null;
        ImmutableArray<TextEdit> within = [.. all.Where(edit => range.Contains(edit.Span))];
        if (within.Length == all.Length || IsSound(tree, within)) return within;
        var (text, lines) = (tree.Source.Text, tree.Source.Lines);
        within =
        [
            .. within.Where(edit => !edit.Text.AsSpan().ContainsAny('\n', '\r') && !text.AsSpan(edit.Span.Start, edit.Span.Length).ContainsAny('\n', '\r')
                && !text.AsSpan(lines.StartOf(lines.LineOf(edit.Span.Start))..edit.Span.Start).Trim(' ').IsEmpty),
        ];
        return IsSound(tree, within) ? within : [];
    }

    private static bool IsSound(SyntaxTree tree, ImmutableArray<TextEdit> edits)
    {
        var result = YamlReader.Read(new SourceText(tree.Source.Path, TextEdit.Apply(tree.Source.Text, edits)));
        return Formatter.CanFormat(result) && Formatter.SaysTheSame(tree, result);
    }
}
