using TechLint.Engine;
using TechLint.Tests.Tools.Fixtures;

namespace TechLint.Tests.Tools.Pages;

/// <summary>Every page of <c>docs/rules</c>, by its path from the root of the repository.</summary>
internal static class RulePages
{
    public const string Command = "dotnet run --project tests/Tools -- pages";

    private const string Folder = "docs/rules";

    public static IEnumerable<(string Path, string Text)> All()
    {
        yield return ($"{Folder}/README.md", RuleIndex.Text());
        foreach (var rule in RuleBook.All)
        {
            if (FixtureReader.All.TryGetValue(rule.Name, out var fixture)) yield return ($"{Folder}/{rule.Name}.md", RulePage.Of(rule, fixture));
        }
    }

    /// <summary>Pages on the disk that no rule answers to.</summary>
    public static IEnumerable<string> Orphans()
    {
        var folder = Repository.At(Folder);
        var known = All().Select(page => page.Path).ToHashSet(StringComparer.Ordinal);
        return !Directory.Exists(folder) ? [] : Directory.EnumerateFiles(folder, "*.md").Select(path => $"{Folder}/{Path.GetFileName(path)}").Where(path => !known.Contains(path)).Order(StringComparer.Ordinal);
    }
}
