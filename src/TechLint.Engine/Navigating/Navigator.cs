using System.Collections.Immutable;
using TechLint.Engine.Files;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine.Navigating;

/// <summary>From a name to where it is defined and used, over the files of a workspace.</summary>
public static class Navigator
{
    public static NameUse? NameAt(Snapshot snapshot, string path, int offset) =>
        snapshot.TreeOf(path) is { } tree ? NameIndex.Of(tree).At(offset) : null;

    public static ImmutableArray<NamePlace> Definitions(Snapshot snapshot, string path, NameUse use) =>
        HomeOf(snapshot, path, use) is { } home ? [.. In(snapshot, home, use).Where(place => place.Use.IsDefinition)] : [];

    /// <summary>Every place that means the same as the one given, itself included, in order of file and place.</summary>
    public static ImmutableArray<NamePlace> Everywhere(Snapshot snapshot, string path, NameUse use, CancellationToken cancellation)
    {
        if (IsOfOneFile(use.Kind)) return [.. In(snapshot, path, use)];
        var home = HomeOf(snapshot, path, use);
        if (home is null && use.Kind is not (NameKind.RequirementSet or NameKind.Rule)) return [.. In(snapshot, path, use)];
        var found = ImmutableArray.CreateBuilder<NamePlace>();
        foreach (var file in snapshot.Files.Append(path).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            cancellation.ThrowIfCancellationRequested();
            if (snapshot.TreeOf(file) is not { } tree || !tree.Source.Text.Contains(use.Name, StringComparison.Ordinal)) continue;
            if (use.Kind is NameKind.RequirementSet or NameKind.Rule || HomeOf(snapshot, file, use) == home) found.AddRange(In(snapshot, file, use));
        }

        return found.ToImmutable();
    }

    /// <summary>The libraries that a technique may draw on: those it names, then the workspace's.</summary>
    public static IEnumerable<string> LibrariesOf(Snapshot snapshot, string technique)
    {
        return snapshot.TreeOf(technique) is { } tree ? LibrariesOf(snapshot, technique, tree) : [];
    }

    /// <param name="tree">The technique's, or of it what is near a place.</param>
    internal static IEnumerable<string> LibrariesOf(Snapshot snapshot, string technique, SyntaxTree tree)
    {
        var own = NameIndex.Of(tree).Uses.Where(use => use.Kind == NameKind.LibraryPath).Select(use => RelativePath.Resolve(technique, use.Name)).OfType<string>();
        return own.Concat(snapshot.SharedLibraries.Select(lookup => lookup.Path)).Distinct(StringComparer.Ordinal)
            .Where(file => FormatKinds.Of(file) == FormatKind.Equipment && snapshot.TreeOf(file) is not null);
    }

    /// <summary>The file that a path of a library or the id of a requirement set stands for; null for every other name, and for a built-in set.</summary>
    public static string? FileOf(Snapshot snapshot, string path, NameUse use) => use.Kind switch
    {
        NameKind.LibraryPath => snapshot.Find(path, use.Name) is { Tree: not null } library ? library.Path : null,
        NameKind.RequirementSet => HomeOf(snapshot, path, use),
        _ => null,
    };

    private static bool IsOfOneFile(NameKind kind) =>
        kind is NameKind.Technique or NameKind.Library or NameKind.Setup or NameKind.Station or NameKind.Beam or NameKind.Reference or NameKind.LibraryPath;

    private static IEnumerable<NamePlace> In(Snapshot snapshot, string file, NameUse use) => snapshot.TreeOf(file) is not { } tree ? []
        : NameIndex.Of(tree).Uses.Where(other => other.Kind == use.Kind && other.Name == use.Name && other.Scope == use.Scope)
            .Select(other => new NamePlace(file, other));

    /// <summary>The file that defines what a name in a file means.</summary>
    private static string? HomeOf(Snapshot snapshot, string file, NameUse use)
    {
        if (IsOfOneFile(use.Kind)) return file;
        if (use.Kind == NameKind.Rule) return null;
        if (use.Kind == NameKind.RequirementSet)
        {
            return Model.Requirements.BuiltInSets.Find(use.Name) is null ? snapshot.FindRequirementSet(use.Name)?.Path : null;
        }

        if (FormatKinds.Of(file) == FormatKind.Technique) return LibrariesOf(snapshot, file).FirstOrDefault(Defines);
        var libraries = snapshot.Files.Where(other => FormatKinds.Of(other) == FormatKind.Equipment && other != file);
        return FormatKinds.Of(file) == FormatKind.Equipment ? libraries.Prepend(file).FirstOrDefault(Defines) : libraries.FirstOrDefault(Defines);

        bool Defines(string library) => In(snapshot, library, use).Any(place => place.Use.IsDefinition);
    }
}
