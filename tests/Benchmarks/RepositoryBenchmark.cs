using System.Diagnostics;
using System.Globalization;

namespace TechLint.Tests.Benchmarks;

/// <summary>A repository of a thousand techniques.</summary>
internal static class RepositoryBenchmark
{
    private const int Count = 1000;

    public static void Run()
    {
        using var repository = GeneratedRepository.Make(Count);
        InProcess.Check(InProcess.Fresh(repository.Folder), [.. repository.Files.Take(50)]);

        var snapshot = InProcess.Fresh(repository.Folder);
        var findings = 0;
        var allocated = GC.GetTotalAllocatedBytes();
        var times = repository.Files.Select(file => Figures.Time(() => findings += InProcess.Check(snapshot, [file]).Findings.Length)).ToArray();
        allocated = GC.GetTotalAllocatedBytes() - allocated;
        Figures.Tell("one file after the other, in process: each", times);
        Figures.Tell("the same, files per second", Count / times.Sum() * 1000, "files/s");
        Figures.Tell("the same, allocated", allocated / 1e6, "MB");
        Figures.Tell("the same, findings", findings, "");

        var jobs = Environment.ProcessorCount;
        var elapsed = Figures.Time(() => InProcess.Check(InProcess.Fresh(repository.Folder), repository.Files, jobs));
        Figures.Tell(string.Create(CultureInfo.InvariantCulture, $"{jobs} jobs, in process"), Count / elapsed * 1000, "files/s");
        Figures.Tell("peak working set of this process", Process.GetCurrentProcess().PeakWorkingSet64 / 1e6, "MB");

        foreach (var (name, path) in Repository.Executables)
        {
            elapsed = Figures.Time(() => Child.Run(path, repository.Folder, "check", "techniques", "--format", "json"));
            Figures.Tell(string.Create(CultureInfo.InvariantCulture, $"{jobs} jobs, {name} process"), Count / elapsed * 1000, "files/s");
        }
    }
}
