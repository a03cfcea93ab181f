namespace TechLint.Tests.EndToEnd.Support;

internal static class Tools
{
    public static bool Has(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries).Any(folder => File.Exists(Path.Combine(folder, program)));
}
