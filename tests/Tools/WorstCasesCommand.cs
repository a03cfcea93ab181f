using TechLint.Tests.Tools.Pages;
using TechLint.Tests.Validation.WorstCases;

namespace TechLint.Tests.Tools;

/// <summary>The offline run of the worst-case search against brute force, a hundred examinations; its results are data of tests/Validation.</summary>
internal static class WorstCasesCommand
{
    private const int Count = 100;

    public static int Run(int count = Count)
    {
        var path = Path.Combine(Repository.Root, "tests", "Validation", "Data", "worst-cases.csv");
        var lines = new List<string> { WorstCaseRow.Heads };
        var worstMiss = 0.0;
        for (var number = 0; number < count; number++)
        {
            foreach (var withDrifts in (ReadOnlySpan<bool>)[false, true])
            {
                var row = WorstCaseRow.Of(number, withDrifts, withDrifts ? Fineness.FullOverDrifts : Fineness.Full);
                lines.Add(row.ToString());
                worstMiss = Math.Max(worstMiss, row.Searched - row.Brute);
                Console.Out.WriteLine(row);
            }
        }

        File.WriteAllLines(path, lines);
        Console.Out.WriteLine($"greatest miss {worstMiss:F3} % of coverage; written to {path}");
        return 0;
    }
}
