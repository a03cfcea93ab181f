using System.Runtime.InteropServices;

namespace TechLint.Tests.Benchmarks;

/// <summary>Measures; judges nothing. See README.md.</summary>
internal static class Program
{
    private static readonly (string Name, Func<Task> Run)[] Parts =
    [
        ("sample", () => Run(SampleBenchmark.Run)),
        ("rules", () => Run(RuleBenchmark.Run)),
        ("repository", () => Run(RepositoryBenchmark.Run)),
        ("completion", () => Run(CompletionBenchmark.Run)),
        ("server", ServerBenchmark.RunAsync),
        ("editor", EditorBenchmark.RunAsync),
    ];

    private static async Task<int> Main(string[] wanted)
    {
        if (wanted.Except(Parts.Select(part => part.Name), StringComparer.Ordinal).Any())
        {
            await Console.Error.WriteLineAsync("Parts: " + string.Join(' ', Parts.Select(part => part.Name)) + "; all where none is named.");
            return 2;
        }

        Figures.Say($"{RuntimeInformation.FrameworkDescription}, {RuntimeInformation.OSArchitecture}, {Environment.ProcessorCount} processors");
        foreach (var (name, run) in Parts)
        {
            if (wanted.Length > 0 && !wanted.Contains(name, StringComparer.Ordinal)) continue;
            Figures.Say($"\n{name}");
            await run();
        }

        return 0;
    }

    private static Task Run(Action part)
    {
        part();
        return Task.CompletedTask;
    }
}
