namespace TechLint.Tests.Benchmarks;

internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string Samples => Path.Combine(Root, "samples");

    /// <summary>The executables that have been built, the native one first.</summary>
    public static IEnumerable<(string Name, string Path)> Executables => new[]
    {
        (Name: "native", Path: Path.Combine(Root, "artifacts", "native", "techlint")),
        (Name: "ordinary", Path: Path.Combine(Root, "src", "TechLint.Cli", "bin", "Release", "net10.0", "techlint")),
    }.Where(one => File.Exists(one.Path));

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TechLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("The benchmarks run inside the repository they were built in.");
    }
}
