namespace TechLint.Tests.EndToEnd.Support;

/// <summary>A copy of the sound samples that a test may break.</summary>
internal sealed class TemporaryWorkspace : IDisposable
{
    /// <summary>A sound technique for a girth weld of pipe.</summary>
    public const string Technique = "techniques/gm-ut-021.technique.yaml";

    private const string SoundOffset = "index-offset: 20 mm";

    public TemporaryWorkspace()
    {
        Folder = Directory.CreateTempSubdirectory("techlint-").FullName;
        foreach (var file in Repository.FilesOf(Repository.Samples)) Write(file, File.ReadAllText(Path.Combine(Repository.Samples, file)));
    }

    public string Folder { get; }

    public string PathOf(string file) => Path.Combine(Folder, file);

    public string Read(string file) => File.ReadAllText(PathOf(file));

    public void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
        File.WriteAllText(PathOf(file), text);
    }

    /// <summary>The technique with its first probe so far from the weld that part of it stays unseen; where the number stands.</summary>
    public (string Text, int Line, int Character) Flawed()
    {
        var sound = Read(Technique);
        var at = sound.IndexOf(SoundOffset, StringComparison.Ordinal);
        if (at < 0) throw new InvalidOperationException($"{Technique} has no '{SoundOffset}' any more: adapt this test.");
        var number = at + SoundOffset.IndexOf("20", StringComparison.Ordinal);
        var before = sound[..number];
        return ($"{before}70{sound[(number + 2)..]}", before.Count(c => c == '\n'), number - before.LastIndexOf('\n') - 1);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
