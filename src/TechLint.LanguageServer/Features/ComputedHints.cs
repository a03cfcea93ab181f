using TechLint.Engine.Hints;
using TechLint.LanguageServer.Protocol;
using Range = TechLint.LanguageServer.Protocol.Range;

namespace TechLint.LanguageServer.Features;

internal static class ComputedHints
{
    public static InlayHint[] Hints(FeatureContext context, Range? range) => context.Settings.InlayHints is false ? []
        : [.. Hinting.Hints(context.Snapshot, context.Path, context.Span(range), context.Cancellation)
            .Select(hint => new InlayHint(context.Map.ToPosition(hint.Offset), hint.Text, true, hint.Tooltip))];

    public static CodeLens[] Lenses(FeatureContext context) => context.Settings.CodeLenses is false ? []
        : [.. Hinting.Lenses(context.Snapshot, context.Path, context.Cancellation)
            .Select(lens => new CodeLens(context.Map.ToRange(lens.Span), new Command(lens.Text, "")))];
}
