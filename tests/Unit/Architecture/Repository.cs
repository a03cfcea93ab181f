using System.Xml.Linq;

namespace TechLint.Tests.Unit.Architecture;

/// <summary>The repository as text: what no compiler checks.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static IReadOnlyList<string> SourceProjects { get; } =
        [.. Directory.GetDirectories(Path.Combine(Root, "src")).Select(folder => Path.GetFileName(folder)).Order(StringComparer.Ordinal)];

    public static XDocument ProjectFile(string project) => XDocument.Load(Path.Combine(Root, "src", project, project + ".csproj"));

    /// <summary>C# files of a folder, relative to the root with forward slashes; what builds leave behind is no source.</summary>
    public static IEnumerable<string> SourcesOf(params string[] folder) =>
        Directory.EnumerateFiles(Path.Combine([Root, .. folder]), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Where(file => !file.Contains("/bin/", StringComparison.Ordinal) && !file.Contains("/obj/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    public static string Read(params string[] path) => File.ReadAllText(Path.Combine([Root, .. path]));

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TechLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("These tests run inside the repository they were built in.");
    }
}
