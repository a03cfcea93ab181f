using TechLint.Engine.Hints;
using TechLint.LanguageServer.Protocol;
using Range = TechLint.LanguageServer.Protocol.Range;

namespace TechLint.LanguageServer.Features;

internal static class ComputedHints
{
    /// <summary>The command behind a lens: its arguments are a document and a setup.</summary>
    public const string Show = "techlint.show";

    public static InlayHint[] Hints(FeatureContext context, Range? range) => context.Settings.InlayHints is false ? []
        : [.. Hinting.Hints(context.Snapshot, context.Path, context.Span(range), context.Cancellation)
            .Select(hint => new InlayHint(context.Map.ToPosition(hint.Offset), hint.Text, true, hint.Tooltip))];

    /// <summary>Places only: what stands there is worked out when the client asks for that lens.</summary>
    public static CodeLens[] Lenses(FeatureContext context) => context.Settings.CodeLenses is false ? []
        : [.. Hinting.Lenses(context.Snapshot, context.Path)
            .Select(lens => new CodeLens(context.Map.ToRange(lens.Span), null, new LensData(context.Document.Uri.Spelling, lens.Setup)))];

    /// <summary>The lens with its text; a click shows all of the setup's figures.</summary>
    public static CodeLens Resolve(FeatureContext context, CodeLens lens) => lens with
    {
        Command = new Command(
            Hinting.Figures(context.Snapshot, context.Path, lens.Data!.Setup!) ?? "no such setup any more", Show, [lens.Data.Uri!, lens.Data.Setup!]),
    };
}
