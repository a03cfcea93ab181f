using System.Collections.Immutable;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
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

    /// <summary>Whether a name is the workspace's own to change: built-in sets, materials and rules are not, nor are paths of files.</summary>
    public static bool CanRename(Snapshot snapshot, string path, NameUse use) =>
        use.Kind is not (NameKind.Rule or NameKind.LibraryPath or NameKind.Station) && !Definitions(snapshot, path, use).IsEmpty;

    /// <summary>Whether a text can be the new name; stations are numbers and go by another rule.</summary>
    public static bool IsName(NameKind kind, string text) => text.Length > 0 && text[0] is not ('.' or '-')
        && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '.' or '-' || (kind == NameKind.Technique && char.IsAsciiLetterUpper(c)));

    /// <summary>The libraries that a technique may draw on: those it names, then the workspace's.</summary>
    public static IEnumerable<string> LibrariesOf(Snapshot snapshot, string technique)
    {
        if (snapshot.TreeOf(technique) is not { } tree) return [];
        var own = BoundDocument.Of(tree).Technique.Equipment.Items.Select(item => item.IsKnown ? RelativePath.Resolve(technique, item.Value!) : null).OfType<string>();
        return own.Concat(snapshot.SharedLibraries.Select(lookup => lookup.Path)).Distinct(StringComparer.Ordinal)
            .Where(file => FormatKinds.Of(file) == FormatKind.Equipment && snapshot.TreeOf(file) is not null);
    }

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
