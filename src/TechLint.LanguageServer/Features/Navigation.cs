using TechLint.Engine.Navigating;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Features;

internal static class Navigation
{
    public static Location[] Definition(FeatureContext context, Position position)
    {
        if (NameAt(context, position) is not { } use) return [];
        if (use.Kind == NameKind.LibraryPath)
        {
            return context.Snapshot.Find(context.Path, use.Name) is { Tree: not null } library && context.LocationOf(library.Path, default) is { } top ? [top] : [];
        }

        return Locations(context, Navigator.Definitions(context.Snapshot, context.Path, use));
    }

    public static Location[] References(FeatureContext context, Position position, bool withDefinition) => NameAt(context, position) is not { } use ? []
        : Locations(context, Navigator.Everywhere(context.Snapshot, context.Path, use, context.Cancellation).Where(place => withDefinition || !place.Use.IsDefinition));

    public static DocumentHighlight[] Highlights(FeatureContext context, Position position)
    {
        if (NameAt(context, position) is not { } use || context.Tree is not { } tree) return [];
        return [.. NameIndex.Of(tree).Uses.Where(other => other.Kind == use.Kind && other.Name == use.Name && other.Scope == use.Scope)
            .Select(other => new DocumentHighlight(context.Map.ToRange(other.Span), other.IsDefinition ? 3 : 2))];
    }

    public static PrepareRenameResult? PrepareRename(FeatureContext context, Position position) =>
        NameAt(context, position) is { } use && Navigator.CanRename(context.Snapshot, context.Path, use)
            ? new PrepareRenameResult(context.Map.ToRange(use.Span), use.Name)
            : null;

    /// <summary>Null where there is nothing to rename or the new name cannot be one.</summary>
    public static WorkspaceEdit? Rename(FeatureContext context, Position position, string newName)
    {
        if (NameAt(context, position) is not { } use || !Navigator.CanRename(context.Snapshot, context.Path, use)) return null;
        if (!Navigator.IsName(use.Kind, newName)) return null;
        var places = Navigator.Everywhere(context.Snapshot, context.Path, use, context.Cancellation);

        // What is named after its scope (a beam by its setup, a reflector by its block) stays: only this name is written anew.
        return context.EditOf(places.Select(place => new Rules.Findings.TextEdit(place.File, place.Use.Span, newName)));
    }

    private static NameUse? NameAt(FeatureContext context, Position position) => Navigator.NameAt(context.Snapshot, context.Path, context.Offset(position));

    private static Location[] Locations(FeatureContext context, IEnumerable<NamePlace> places) =>
        [.. places.Select(place => context.LocationOf(place.File, place.Use.Span)).OfType<Location>()];
}
