namespace TechLint.Tests.Tools.Pages;

/// <summary>Writes <c>docs/rules</c> anew.</summary>
internal static class PagesCommand
{
    public static int Run()
    {
        foreach (var orphan in RulePages.Orphans()) File.Delete(Repository.At(orphan));
        var count = 0;
        foreach (var (path, text) in RulePages.All())
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Repository.At(path))!);
            File.WriteAllText(Repository.At(path), text);
            count++;
        }

        Console.WriteLine($"{count} pages written");
        return 0;
    }
}
