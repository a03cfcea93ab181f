using System.Collections.Immutable;
using System.Text;

namespace TechLint.Syntax.Formatting;

/// <summary>
/// Puts the white space of a text in order: see <see cref="Spacing"/>. Comments, blank lines, quotes, units and digits stay as the author wrote
/// them. The result says the same as the original, and formatting it again changes nothing.
/// </summary>
public static class Formatter
{
    /// <summary>A table's columns may come apart when the text before them closes up; then its extra spaces go in the next round. Each round only
    /// takes spaces away, so that few are needed.</summary>
    private const int MostRounds = 16;

    /// <summary>The edits in rising order; null where the text cannot be read as YAML, or does not allow it.</summary>
    public static ImmutableArray<TextEdit>? Edits(SyntaxTree tree)
    {
        if (!CanFormat(tree) || Tokens.Of(tree) is not { } original) return null;
        if (original.Count == 0) return [];
        var current = tree;
        var tokens = original;
        for (var round = 0; round < MostRounds; round++)
        {
            var (gaps, texts) = Spacing.Of(current.Source, tokens);
            var next = Joined(current.Source.Text, gaps, texts);
            if (string.Equals(next, current.Source.Text, StringComparison.Ordinal)) return Difference(tree.Source.Text, original, current.Source.Text, tokens);
            current = YamlReader.Read(new SourceText(tree.Source.Path, next));
            if (!SameMeaning.Holds(tree, current, keepsOrder: true) || Tokens.Of(current) is not { } again || again.Count != original.Count) return null;
            tokens = again;
        }

        return null;
    }

    /// <summary>The whole text, formatted; null where <see cref="Edits"/> is.</summary>
    public static string? Format(SyntaxTree tree) => Edits(tree) is { } edits ? TextEdit.Apply(tree.Source.Text, edits) : null;

    /// <summary>White space can be moved only where the text is sound YAML: in a broken one it may be what is broken.</summary>
    public static bool CanFormat(SyntaxTree tree) => !tree.Problems.Any(problem => problem.Code is Sentences.SyntaxCode or Sentences.LimitCode);

    /// <summary>Whether two trees hold the same values and comments, keys in any order.</summary>
    public static bool SaysTheSame(SyntaxTree one, SyntaxTree other) => SameMeaning.Holds(one, other, keepsOrder: false);

    private static string Joined(string text, string[] gaps, string[] texts)
    {
        var result = new StringBuilder(text.Length + 64).Append(text, 0, Spacing.Start(text));
        for (var index = 0; index < texts.Length; index++) result.Append(gaps[index]).Append(texts[index]);
        return result.Append(gaps[^1]).ToString();
    }

    private static ImmutableArray<TextEdit> Difference(string old, List<Token> oldTokens, string @new, List<Token> newTokens)
    {
        var edits = ImmutableArray.CreateBuilder<TextEdit>();
        for (var index = 0; index <= oldTokens.Count; index++)
        {
            var gap = Spacing.OldGap(old, oldTokens, index);
            Add(index == 0 ? Spacing.Start(old) : oldTokens[index - 1].Span.End, gap, Spacing.OldGap(@new, newTokens, index));
            if (index < oldTokens.Count) Add(oldTokens[index].Span.Start, Text(old, oldTokens[index]), Text(@new, newTokens[index]));
        }

        return edits.ToImmutable();

        void Add(int start, string before, string after)
        {
            if (string.Equals(before, after, StringComparison.Ordinal)) return;

            // What both ends share stays: an editor keeps its marks there.
            var shared = Math.Min(before.Length, after.Length);
            var head = 0;
            while (head < shared && before[head] == after[head]) head++;
            var tail = 0;
            while (tail < shared - head && before[^(tail + 1)] == after[^(tail + 1)]) tail++;
            edits.Add(new TextEdit(new TextSpan(start + head, before.Length - head - tail), after[head..^tail]));
        }

        static string Text(string text, Token token) => text.Substring(token.Span.Start, token.Span.Length);
    }
}
