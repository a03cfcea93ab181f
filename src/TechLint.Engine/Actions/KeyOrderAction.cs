using System.Runtime.CompilerServices;
using TechLint.Engine.Formatting;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Engine.Actions;

/// <summary>What <c>techlint format --reorder</c> does, as one edit over the lines that differ.</summary>
public static class KeyOrderAction
{
    /// <summary>An editor asks at every move of its caret: a text is put in order once.</summary>
    private static readonly ConditionalWeakTable<SyntaxTree, Made> Known = [];

    private sealed record Made(Fix? Fix);

    /// <summary>Null where the text is no sound YAML, or its keys are in order already and only white space would move.</summary>
    public static Fix? Of(Snapshot snapshot, string path) =>
        snapshot.TreeOf(path) is { } tree ? Known.GetValue(tree, static one => new Made(Make(one))).Fix : null;

    private static Fix? Make(SyntaxTree tree)
    {
        if (TextFormat.Of(tree, reorder: true) is not { } ordered) return null;
        if (string.Equals(ordered, TextFormat.Of(tree, reorder: false), StringComparison.Ordinal)) return null;
        var before = tree.Source.Text;
        var (head, tail) = (before.AsSpan().CommonPrefixLength(ordered), 0);
        while (head > 0 && before[head - 1] is not '\n') head--;
        while (tail < Math.Min(before.Length, ordered.Length) - head && before[^(tail + 1)] == ordered[^(tail + 1)]) tail++;
        while (tail > 0 && (before.Length - tail == 0 || before[before.Length - tail - 1] is not '\n' || ordered[ordered.Length - tail - 1] is not '\n')) tail--;
        return new Fix("Put the keys in the canonical order", Safe: false, [new TextEdit(tree.Source.Path, TextSpan.FromBounds(head, before.Length - tail), ordered[head..^tail])]);
    }
}
