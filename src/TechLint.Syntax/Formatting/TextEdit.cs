using System.Collections.Immutable;
using System.Text;

namespace TechLint.Syntax.Formatting;

/// <summary>Puts a text in the place of a stretch of another.</summary>
/// <param name="Span">In the original text.</param>
/// <param name="Text">What stands there afterwards.</param>
public readonly record struct TextEdit(TextSpan Span, string Text)
{
    /// <summary>Edits in rising order that do not overlap.</summary>
    public static string Apply(string text, ImmutableArray<TextEdit> edits)
    {
        if (edits.IsEmpty) return text;
        var result = new StringBuilder(text.Length + 64);
        var at = 0;
        foreach (var edit in edits)
        {
            result.Append(text, at, edit.Span.Start - at).Append(edit.Text);
            at = edit.Span.End;
        }

        return result.Append(text, at, text.Length - at).ToString();
    }
}
