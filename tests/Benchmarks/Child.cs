using System.Diagnostics;

namespace TechLint.Tests.Benchmarks;

/// <summary>The built executable, run to its end with its output thrown away.</summary>
internal static class Child
{
    public static void Run(string program, string folder, params string[] arguments)
    {
        using var process = Start(program, folder, arguments);
        process.StandardInput.Close();
        process.OutputDataReceived += static (_, _) => { };
        process.ErrorDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        process.WaitForExit();
        if (process.ExitCode > 1) throw new InvalidOperationException($"{program} left with status {process.ExitCode}.");
    }

    public static Process Start(string program, string folder, params string[] arguments) => Process.Start(new ProcessStartInfo(program, arguments)
    {
        WorkingDirectory = folder,
        UseShellExecute = false,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;
}
