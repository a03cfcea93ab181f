using System.Diagnostics;

namespace TechLint.Tests.Tools.Validation;

/// <summary>Runs the Validation tests and lets them write <c>docs/validation.md</c>.</summary>
internal static class ValidationCommand
{
    /// <summary>As <c>ValidationRun</c> of the tests reads it.</summary>
    private const string PageVariable = "TECHLINT_VALIDATION_PAGE";

    public static int Run()
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = Repository.Root };
        foreach (var argument in new[] { "run", "-c", "Release", "--project", Repository.At("tests", "Validation") }) start.ArgumentList.Add(argument);
        start.Environment[PageVariable] = Repository.At("docs", "validation.md");
        using var run = Process.Start(start)!;
        run.WaitForExit();
        return run.ExitCode;
    }
}
