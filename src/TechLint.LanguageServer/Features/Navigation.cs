using StreamJsonRpc;
using TechLint.Engine.Navigating;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;

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

    /// <summary>Null where there is no name; a name that cannot be renamed is refused with the reason.</summary>
    public static PrepareRenameResult? PrepareRename(FeatureContext context, Position position)
    {
        if (NameAt(context, position) is not { } use) return null;
        return Renaming.Obstacle(context.Snapshot, context.Path, use) is { } obstacle ? throw Refused(obstacle) : new PrepareRenameResult(context.Map.ToRange(use.Span), use.Name);
    }

    public static WorkspaceEdit? Rename(FeatureContext context, Position position, string newName)
    {
        if (NameAt(context, position) is not { } use) throw Refused("there is no name here");
        if (Renaming.Obstacle(context.Snapshot, context.Path, use, newName, context.Cancellation) is { } obstacle) throw Refused(obstacle);
        return context.EditOf(Renaming.Edits(context.Snapshot, context.Path, use, newName, context.Cancellation));
    }

    private static LocalRpcException Refused(string reason) => new(reason) { ErrorCode = RpcErrors.RequestFailed };

    private static NameUse? NameAt(FeatureContext context, Position position) => Navigator.NameAt(context.Snapshot, context.Path, context.Offset(position));

    private static Location[] Locations(FeatureContext context, IEnumerable<NamePlace> places) =>
        [.. places.Select(place => context.LocationOf(place.File, place.Use.Span)).OfType<Location>()];
}
