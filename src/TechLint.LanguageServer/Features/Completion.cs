using System.Globalization;
using TechLint.Engine.Completing;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Features;

internal static class Completion
{
    public static CompletionList? Of(FeatureContext context, Position position)
    {
        if (Completer.At(context.Snapshot, context.Path, context.Offset(position)) is not { } found) return null;
        var range = context.Map.ToRange(found.Replaced);
        var shares = context.Abilities.SharesEditRange;
        return new CompletionList(false, [.. found.Choices.Select((choice, index) =>
        {
            // A snippet of several lines brings its own indentation: only a client that leaves it alone gets it.
            var snippet = context.Abilities.Snippets && choice.Snippet is { } text && (context.Abilities.InsertAsIs || !text.Contains('\n', StringComparison.Ordinal)) ? choice.Snippet : null;
            var order = string.Create(CultureInfo.InvariantCulture, $"{(choice.IsFirst ? 0 : 1)}{index:d4}");
            return new CompletionItem(
                choice.Label, KindOf(choice.Kind), choice.Detail.Length > 0 ? choice.Detail : null,
                choice.Documentation.Length > 0 ? new MarkupContent("markdown", choice.Documentation) : null, order, choice.Filter ?? choice.Label,
                snippet is null ? null : 2, snippet is not null && context.Abilities.InsertAsIs ? 1 : null, shares ? null : new TextEdit(range, snippet ?? choice.Text),
                shares ? snippet ?? choice.Text : null);
        })], shares ? new CompletionItemDefaults(range) : null);
    }

    private static int KindOf(ChoiceKind kind) => kind switch
    {
        ChoiceKind.Key => 10,
        ChoiceKind.Unit => 11,
        ChoiceKind.Value => 12,
        _ => 18,
    };
}
