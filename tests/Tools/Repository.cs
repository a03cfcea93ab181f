namespace TechLint.Tests.Tools;

/// <summary>Where the files of this repository lie.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TechLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException($"No TechLint.sln above {from}.");
    }
}
