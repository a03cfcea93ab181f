namespace TechLint.Engine.Files;

/// <summary>The files that TechLint judges, by the end of their names.</summary>
public static class FileKinds
{
    public const string Settings = "techlint.yaml";
    public const string Technique = ".technique.yaml";
    public const string Equipment = ".equipment.yaml";
    public const string Requirements = ".requirements.yaml";

    public static bool IsKnown(string path)
    {
        var name = path.AsSpan(path.LastIndexOf('/') + 1);
        return name.SequenceEqual(Settings) || name.EndsWith(Technique, StringComparison.Ordinal)
            || name.EndsWith(Equipment, StringComparison.Ordinal) || name.EndsWith(Requirements, StringComparison.Ordinal);
    }
}
