namespace TechLint.Tests.EndToEnd.Support;

/// <summary>Places of the repository that these tests were built in.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string Samples => Path.Combine(Root, "samples");

    /// <summary>A workspace of its own inside the samples, one planted flaw a technique.</summary>
    public static string Flawed => Path.Combine(Samples, "flawed");

    public static string Schemas => Path.Combine(Root, "schemas");

    public static string EndToEnd => Path.Combine(Root, "tests", "EndToEnd");

    /// <summary>The files of a workspace, relative to it with forward slashes; workspaces nested in it are left out.</summary>
    public static IReadOnlyList<string> FilesOf(string workspace) =>
    [
        .. Directory.EnumerateFiles(workspace, "*.yaml", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(workspace, file).Replace('\\', '/'))
            .Where(file => workspace == Flawed || !file.StartsWith("flawed/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TechLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("These tests run inside the repository they were built in.");
    }
}
