using TechLint.Engine.Formatting;
using TechLint.LanguageServer.Protocol;
using TechLint.Syntax.Formatting;
using Range = TechLint.LanguageServer.Protocol.Range;
using TextEdit = TechLint.LanguageServer.Protocol.TextEdit;

namespace TechLint.LanguageServer.Features;

/// <summary>The formatting of <c>techlint format</c>. The client's options (width of a tab) are not asked: the format has one spacing.</summary>
internal static class Formatting
{
    /// <summary>Written out by hand.</summary>
    private const int Manual = 1;

    /// <summary>Null where the text is no sound YAML.</summary>
    public static TextEdit[]? Whole(FeatureContext context) =>
        context.Tree is { } tree && Formatter.Edits(tree) is { } edits ? Render(context, edits) : null;

    public static TextEdit[]? Within(FeatureContext context, Range range) =>
        context.Tree is { } tree && TextFormat.Within(tree, context.Span(range)) is { } edits ? Render(context, edits) : null;

    /// <summary>Only for whoever asked for it, and not when an editor saves by itself while its user types.</summary>
    public static TextEdit[]? BeforeSaving(FeatureContext context, int? reason) =>
        context.Settings.FormatOnSave is true && reason is null or Manual ? Whole(context) : null;

    private static TextEdit[] Render(FeatureContext context, IEnumerable<Syntax.Formatting.TextEdit> edits) =>
        [.. edits.Select(edit => new TextEdit(context.Map.ToRange(edit.Span), edit.Text))];
}
