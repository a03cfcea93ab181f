namespace TechLint.Tests.EndToEnd.Support;

internal static class Tools
{
    public static bool Has(string program) => Find(program) is not null;

    public static string PathOf(string program) => Find(program) ?? throw new InvalidOperationException($"{program} is not installed");

    private static string? Find(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries).Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
