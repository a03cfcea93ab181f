using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Engine.Actions;

/// <summary>A waiver to be filled in: reason, approver and last day are left empty, so that it hides nothing until somebody answers for it.</summary>
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
        var entry = $"{{rule: {finding.Rule}, at: {Quoted(finding.At)}, reason: , approved-by: , until: }}";
        var newline = tree.Source.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var edit = root.Find("waivers") switch
        {
            null => AtEnd(tree, newline, "waivers:" + newline + "  - " + entry),
            { Value: SequenceNode { IsFlow: false, Items: [.., var last] } list } =>
                new TextEdit(finding.File, new TextSpan(last.Span.End, 0), newline + new string(' ', tree.Source.Lines.Utf16Column(list.Span.Start)) + "- " + entry),
            { Value: ScalarNode { IsMissing: true } nothing } => new TextEdit(finding.File, new TextSpan(nothing.Span.End, 0), newline + "  - " + entry),
            _ => null,
        };
        return edit is null ? null : new Fix($"Begin a waiver of {finding.Rule} here (reason, approver and last day to be filled in)", Safe: false, [edit]);
    }

    private static string Quoted(string at) => at.Contains('#', StringComparison.Ordinal) ? $"\"{at}\"" : at;

    private static TextEdit AtEnd(SyntaxTree tree, string newline, string text)
    {
        var end = tree.Source.Text.Length;
        var start = end == 0 || tree.Source.Text[end - 1] is '\n' or '\r' ? "" : newline;
        return new TextEdit(tree.Source.Path, new TextSpan(end, 0), start + newline + text + newline);
    }
}
