using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Rules.Findings;

namespace TechLint.Engine.Navigating;

/// <summary>
/// A name written anew wherever it is meant: library, techniques, model paths of waivers. What is named after its scope (a beam by its setup, a
/// reflector by its block) stays. Stations are numbers that a frame shares with its setups, and other techniques use the same frame.
/// </summary>
public static class Renaming
{
    /// <summary>Why a name cannot be renamed at all; null where it can.</summary>
    public static string? Obstacle(Snapshot snapshot, string path, NameUse use) => use.Kind switch
    {
        NameKind.Rule => "a rule's name is not the workspace's to change",
        NameKind.LibraryPath => "this is the path of a file: rename the file",
        NameKind.Station => "a station is a number of the frame, and every technique with that frame uses it: change it in both by hand",
        _ when Navigator.Definitions(snapshot, path, use).IsEmpty => $"{use.Name} is not defined in this workspace, so that it cannot be renamed here",
        _ => null,
    };

    /// <summary>Why a text cannot be the new name; null where it can. One that is taken by another of the same kind is refused in every file that the
    /// renaming touches.</summary>
    public static string? Obstacle(Snapshot snapshot, string path, NameUse use, string newName, CancellationToken cancellation)
    {
        if (Obstacle(snapshot, path, use) is { } obstacle) return obstacle;
        if (!IsName(use.Kind, newName))
        {
            return use.Kind == NameKind.Technique ? "a technique's number is made of letters, digits, dots and hyphens" : "an id is made of small letters, digits, dots and hyphens, a letter or digit first";
        }

        if (newName == use.Name) return null;
        var asked = use with { Name = newName };
        foreach (var file in Touched(snapshot, path, use, cancellation))
        {
            var taken = Navigator.Definitions(snapshot, file, asked);
            if (!taken.IsEmpty) return $"{newName} is taken already in {taken[0].File}";
        }

        if (use.Kind == NameKind.Material && Ultrasonics.Materials.BuiltInMaterials.Find(newName) is not null) return $"{newName} is a built-in material";
        if (use.Kind == NameKind.RequirementSet && Model.Requirements.BuiltInSets.Find(newName) is not null) return $"{newName} is a built-in requirement set";
        return use.Kind == NameKind.Technique && TechniqueOf(snapshot, newName) is { } other && other != path ? $"{newName} is taken already in {other}" : null;
    }

    public static ImmutableArray<TextEdit> Edits(Snapshot snapshot, string path, NameUse use, string newName, CancellationToken cancellation) =>
        [.. Navigator.Everywhere(snapshot, path, use, cancellation).Select(place => new TextEdit(place.File, place.Use.Span, newName))];

    private static IEnumerable<string> Touched(Snapshot snapshot, string path, NameUse use, CancellationToken cancellation) =>
        Navigator.Everywhere(snapshot, path, use, cancellation).Select(place => place.File).Append(path).Distinct(StringComparer.Ordinal);

    private static string? TechniqueOf(Snapshot snapshot, string number) => snapshot.Files.FirstOrDefault(file =>
        FormatKinds.Of(file) == FormatKind.Technique && snapshot.TreeOf(file) is { } tree
        && NameIndex.Of(tree).Uses.Any(use => use is { Kind: NameKind.Technique, IsDefinition: true } && use.Name == number));

    private static bool IsName(NameKind kind, string text) => text.Length > 0 && text[0] is not ('.' or '-')
        && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '.' or '-' || (kind == NameKind.Technique && char.IsAsciiLetterUpper(c)));
}
