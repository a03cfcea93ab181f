namespace TechLint.Tests.EndToEnd.Support;

/// <summary>A copy of the flawed samples that an editor may open and mend.</summary>
internal sealed class EditorWorkspace : IDisposable
{
    /// <summary>A number without its unit, and nothing else.</summary>
    public const string Technique = "techniques/unit-missing.technique.yaml";

    public EditorWorkspace()
    {
        Folder = Directory.CreateTempSubdirectory("techlint-").FullName;
        foreach (var file in Repository.FilesOf(Repository.Flawed))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
            File.Copy(Path.Combine(Repository.Flawed, file), PathOf(file));
        }
    }

    public string Folder { get; }

    public string PathOf(string file) => Path.Combine(Folder, file);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
