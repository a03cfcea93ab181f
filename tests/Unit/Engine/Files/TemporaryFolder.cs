namespace TechLint.Tests.Unit.Engine.Files;

/// <summary>A folder of a test's own, gone when the test ends.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public TemporaryFolder() => Path = Directory.CreateTempSubdirectory("techlint-test-").FullName;

    public string Path { get; }

    public string At(string relative) => System.IO.Path.Combine(Path, relative);

    public TemporaryFolder With(string relative, string text = "technique: T\n") => With(relative, System.Text.Encoding.UTF8.GetBytes(text));

    public TemporaryFolder With(string relative, byte[] bytes)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(At(relative))!);
        File.WriteAllBytes(At(relative), bytes);
        return this;
    }

    public TemporaryFolder WithLink(string relative, string target)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(At(relative))!);
        File.CreateSymbolicLink(At(relative), target);
        return this;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
