using System.Collections.Concurrent;
using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Model.Requirements;

/// <summary>The requirement sets that come with the program, each read the first time that it is named.</summary>
public static class BuiltInSets
{
    private const string Folder = "requirements/";
    private const string Ending = ".requirements.yaml";

    private static readonly ConcurrentDictionary<string, RequirementSet?> Read = new(StringComparer.Ordinal);

    public static ImmutableArray<string> Ids { get; } =
    [
        .. typeof(BuiltInSets).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal) && name.EndsWith(Ending, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^Ending.Length]).Order(StringComparer.Ordinal),
    ];

    public static RequirementSet? Find(string id) => Read.GetOrAdd(id, Load);

    private static RequirementSet? Load(string id)
    {
        using var stream = typeof(BuiltInSets).Assembly.GetManifestResourceStream(Folder + id + Ending);
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        var tree = YamlReader.Read(new SourceText($"built-in/{id}{Ending}", reader.ReadToEnd()));
        return RequirementSetBinder.Bind(tree, check: null, isBuiltIn: true);
    }
}
