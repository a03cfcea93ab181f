namespace TechLint.LanguageServer.Documents;

/// <summary>Which files this server answers for: their names say so, whatever language the editor believes them to be in.</summary>
internal static class FileKinds
{
    public const string Settings = "techlint.yaml";

    public static readonly IReadOnlyList<string> Globs =
        ["**/*.technique.yaml", "**/*.equipment.yaml", "**/*.requirements.yaml", "**/" + Settings];

    private static readonly string[] Endings = [".technique.yaml", ".equipment.yaml", ".requirements.yaml"];

    public static bool IsOurs(string fileName) =>
        IsSettings(fileName) || Endings.Any(ending => fileName.EndsWith(ending, StringComparison.Ordinal) && fileName.Length > ending.Length);

    public static bool IsSettings(string fileName) => string.Equals(fileName, Settings, StringComparison.Ordinal);
}
