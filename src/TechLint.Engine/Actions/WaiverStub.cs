using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Engine.Actions;

/// <summary>A waiver to be filled in: reason and last day are left empty and nobody approves it yet, so that it hides nothing until somebody answers for it.</summary>
public static class WaiverStub
{
    /// <summary>Null where a waiver would not help: problems of the text itself, findings on waivers, files that are no techniques.</summary>
    public static Fix? For(Snapshot snapshot, Finding finding)
    {
        if (FormatKinds.Of(finding.File) != FormatKind.Technique || snapshot.TreeOf(finding.File) is not { Root: MappingNode root } tree) return null;
        if (finding.At.Length == 0 || RuleRegistry.Find(finding.Rule) is null or ProblemRule) return null;
        if (RuleRegistry.Find(finding.Rule)!.Description.Family is RuleFamily.Waivers or RuleFamily.Run) return null;
        var linked = snapshot.LinkedOf(finding.File);
        if (linked is not null && linked.Requirements.All.Any(set => set.NeverWaivable.Contains(finding.Rule, StringComparer.Ordinal))) return null;
        var entry = $"{{rule: {finding.Rule}, at: {Quoted(finding.At)}, reason: , until: }}";
        var newline = tree.Source.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        return Edit(tree, root, entry, newline) is { } edit && IsSound(tree, edit)
            ? new Fix($"Begin a waiver of {finding.Rule} here (reason and last day to be filled in; it holds once someone approves it)", Safe: false, [edit])
            : null;
    }

    private static TextEdit? Edit(SyntaxTree tree, MappingNode root, string entry, string newline)
    {
        var (file, text, lines) = (tree.Source.Path, tree.Source.Text, tree.Source.Lines);
        return root.Find("waivers") switch
        {
            null => Anew(tree, root, newline, "waivers:" + newline + "  - " + entry),
            { Value: SequenceNode { IsFlow: false, Items: [.., var last] } list } =>
                new TextEdit(file, new TextSpan(LineEnd(last.Span.End), 0), newline + new string(' ', lines.Utf16Column(list.Span.Start)) + "- " + entry),
            { Value: SequenceNode { IsFlow: true, Items: [.., var last] } list } when last.Span.Length > 0 && text[list.Span.End - 1] is ']' =>
                new TextEdit(file, new TextSpan(last.Span.End, 0), ", " + entry),
            { Value: SequenceNode { IsFlow: true, Items.IsEmpty: true } list } when text[list.Span.End - 1] is ']' => new TextEdit(file, new TextSpan(list.Span.End - 1, 0), entry),
            { Value: ScalarNode { IsMissing: true } nothing } => new TextEdit(file, new TextSpan(LineEnd(nothing.Span.End), 0), newline + "  - " + entry),
            _ => null,
        };

        int LineEnd(int offset) => lines.EndOf(lines.LineOf(offset));
    }

    /// <summary>A text that was sound must stay so, and say the same but for the waiver.</summary>
    private static bool IsSound(SyntaxTree tree, TextEdit edit)
    {
        var text = string.Concat(tree.Source.Text.AsSpan(0, edit.Span.Start), edit.NewText, tree.Source.Text.AsSpan(edit.Span.End));
        var after = YamlReader.Read(new SourceText(tree.Source.Path, text));
        return Faults(after) <= Faults(tree) && after.Root is MappingNode root && Count(root) == Count((MappingNode)tree.Root!) + 1;

        static int Faults(SyntaxTree one) => one.Problems.Length;

        static int Count(MappingNode root) => root.Find("waivers")?.Value is SequenceNode list ? list.Items.Length : 0;
    }

    /// <summary>Before the first key that comes later in the canonical order, else at the end.</summary>
    private static TextEdit Anew(SyntaxTree tree, MappingNode root, string newline, string text)
    {
        var keys = FormatShapes.Of(FormatKind.Technique).Keys;
        var place = keys.IndexOf(keys.First(key => key.Name is "waivers"));
        var lines = tree.Source.Lines;
        foreach (var entry in root.IsFlow ? [] : root.Entries)
        {
            if (entry.IsBroken || keys.IndexOf(keys.FirstOrDefault(key => key.Name == entry.Key.Value)!) <= place) continue;
            return new TextEdit(tree.Source.Path, new TextSpan(lines.StartOf(lines.LineOf(entry.Span.Start)), 0), text + newline + newline);
        }

        return AtEnd(tree, newline, text);
    }

    private static string Quoted(string at) => at.Contains('#', StringComparison.Ordinal) ? $"\"{at}\"" : at;

    private static TextEdit AtEnd(SyntaxTree tree, string newline, string text)
    {
        var end = tree.Source.Text.Length;
        var start = end == 0 || tree.Source.Text[end - 1] is '\n' or '\r' ? "" : newline;
        return new TextEdit(tree.Source.Path, new TextSpan(end, 0), start + newline + text + newline);
    }
}
