namespace TechLint.Tests.Benchmarks;

/// <summary>One technique: by a new process, and in this one with nothing kept from the last time.</summary>
internal static class SampleBenchmark
{
    private const string Sample = "techniques/gm-ut-021.technique.yaml";

    public static void Run()
    {
        foreach (var (name, path) in Repository.Executables)
        {
            Figures.Tell($"start {name} process: --version", Figures.Times(20, () => Child.Run(path, Repository.Samples, "--version")));
            Figures.Tell($"cold, {name} process: check {Sample[11..]}", Figures.Times(20, () => Child.Run(path, Repository.Samples, "check", Sample)));
        }

        foreach (var file in Directory.GetFiles(Path.Combine(Repository.Samples, "techniques"), "*.technique.yaml").Order(StringComparer.Ordinal))
        {
            Tell(Repository.Samples, "techniques/" + Path.GetFileName(file));
        }

        using var generated = GeneratedRepository.Make(1, offShare: 1);
        Tell(generated.Folder, generated.Files[0]);
    }

    private static void Tell(string folder, string file)
    {
        void Once() => InProcess.Check(InProcess.Fresh(folder), [file]);
        Figures.Times(5, Once);
        Figures.Tell($"warm, in process: {file["techniques/".Length..]}", Figures.Times(30, Once));
    }
}
