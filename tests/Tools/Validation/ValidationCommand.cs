using System.Diagnostics;

namespace TechLint.Tests.Tools.Validation;

/// <summary>Runs the Validation tests and lets them write <c>docs/validation.md</c>, unless one fails.</summary>
internal static class ValidationCommand
{
    /// <summary>As <c>ValidationRun</c> of the tests reads it.</summary>
    private const string PageVariable = "TECHLINT_VALIDATION_PAGE";

    public static int Run()
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = Repository.Root };
        foreach (var argument in new[] { "run", "-c", "Release", "--project", Repository.At("tests", "Validation") }) start.ArgumentList.Add(argument);

        // A run with a failing test says nothing that may be kept: the page is moved into its place only after a clean one.
        var page = Path.GetTempFileName();
        try
        {
            start.Environment[PageVariable] = page;
            using var run = Process.Start(start)!;
            run.WaitForExit();
            if (run.ExitCode == 0) File.Copy(page, Repository.At("docs", "validation.md"), overwrite: true);
            else Console.Error.WriteLine("Tests failed: docs/validation.md stays as it is.");
            return run.ExitCode;
        }
        finally
        {
            File.Delete(page);
        }
    }
}
