using System.Diagnostics;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>
/// The script for contributors, run in a copy of this tree, and then the copy's own <c>tests/run</c>: all of it but this project, which holds this
/// test. Costs a build of the whole copy: minutes on a small machine, so it stands in the trait <c>Cost=Build</c>.
/// </summary>
[Trait("Cost", "Build")]
public sealed class AddRuleTests
{
    private static readonly string[] LeftOut = [".git", "bin", "obj", "node_modules", "artifacts"];

    [Fact]
    public async Task An_added_example_rule_passes_the_run_of_all_tests()
    {
        if (OperatingSystem.IsWindows()) return; // a bash script
        var copy = Directory.CreateTempSubdirectory("techlint-add-rule-");
        try
        {
            Copy(new DirectoryInfo(Repository.Root), copy);
            await RunAsync(copy.FullName, "bash", "tests/add-rule", "example-of-a-rule", "fit");
            File.Exists(Path.Combine(copy.FullName, "docs/rules/example-of-a-rule.md")).Should().BeTrue();
            var said = await RunAsync(copy.FullName, "bash", "tests/run", "Unit", "Validation");
            said.Should().MatchRegex("[1-9][0-9]* passed, 0 failed");
        }
        finally
        {
            copy.Delete(recursive: true);
        }
    }

    private static async Task<string> RunAsync(string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        // No server of the build may outlive the copy that it works in.
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["UseSharedCompilation"] = "false";
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        var said = await output + await errors;
        process.ExitCode.Should().Be(0, $"{program} {string.Join(' ', arguments)} said: {said}");
        return said;
    }

    private static void Copy(DirectoryInfo from, DirectoryInfo to)
    {
        foreach (var file in from.EnumerateFiles().Where(file => !LeftOut.Contains(file.Name))) file.CopyTo(Path.Combine(to.FullName, file.Name));
        foreach (var folder in from.EnumerateDirectories().Where(folder => !LeftOut.Contains(folder.Name) && folder.LinkTarget is null))
        {
            Copy(folder, to.CreateSubdirectory(folder.Name));
        }
    }
}
