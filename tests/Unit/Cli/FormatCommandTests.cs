using System.Text;
using FluentAssertions;
using TechLint.Cli;
using TechLint.Tests.Unit.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Cli;

public sealed class FormatCommandTests : IDisposable
{
    private const string Loose = "technique:   X-1\nweld:\n    joint: butt\n";
    private const string Tidy = "technique: X-1\nweld:\n  joint: butt\n";
    private readonly TemporaryFolder folder = new();

    public FormatCommandTests() => folder.With("techlint.yaml", "techlint: 1\n").With("loose.technique.yaml", Loose).With("tidy.technique.yaml", Tidy);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Files_are_written_and_named_and_only_those_that_change()
    {
        Run("format").Should().Be((0, "", "techlint: loose.technique.yaml: formatted\n"));
        Text("loose.technique.yaml").Should().Be(Tidy);
        Run("format").Should().Be((0, "", ""));
    }

    [Fact]
    public void Check_lists_what_would_change_and_changes_nothing()
    {
        Run("format", "--check").Should().Be((1, "loose.technique.yaml\n", ""));
        Text("loose.technique.yaml").Should().Be(Loose);
        Run("format", "--check", "tidy.technique.yaml").Status.Should().Be(0);
    }

    [Fact]
    public void Diff_prints_a_patch_and_changes_nothing()
    {
        var run = Run("format", "--diff");
        run.Status.Should().Be(0);
        run.Output.Should().Be(
            "--- loose.technique.yaml\n+++ loose.technique.yaml\n@@ -1,3 +1,3 @@\n-technique:   X-1\n+technique: X-1\n weld:\n-    joint: butt\n+  joint: butt\n");
        Text("loose.technique.yaml").Should().Be(Loose);
        Run("format", "--diff", "--check").Status.Should().Be(1);
    }

    [Fact]
    public void Reorder_puts_keys_in_order()
    {
        folder.With("turned.technique.yaml", "revision: B\ntechnique: X-2\n");
        Run("format", "--check", "turned.technique.yaml").Status.Should().Be(0);
        Run("format", "--reorder", "turned.technique.yaml").Status.Should().Be(0);
        Text("turned.technique.yaml").Should().Be("technique: X-2\nrevision: B\n");
    }

    [Fact]
    public void Standard_input_goes_to_standard_output()
    {
        RunOn(Loose, "format", "-", "--stdin-filename", "x.technique.yaml").Should().Be((0, Tidy, ""));
        RunOn(Loose, "format", "-", "--stdin-filename", "x.technique.yaml", "--check").Should().Be((1, "-\n", ""));
    }

    [Fact]
    public void A_broken_text_is_left_alone_and_the_rest_is_done()
    {
        folder.With("broken.technique.yaml", "a: {b\n");
        var run = Run("format");
        run.Status.Should().Be(2);
        run.Error.Should().Be(
            "techlint: broken.technique.yaml: left as it is: no sound YAML; 'techlint check' says why\ntechlint: loose.technique.yaml: formatted\n");
        Text("broken.technique.yaml").Should().Be("a: {b\n");
    }

    private string Text(string path) => File.ReadAllText(folder.At(path));

    private (int Status, string Output, string Error) Run(params string[] arguments) => RunOn("", arguments);

    private (int Status, string Output, string Error) RunOn(string input, params string[] arguments)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(input));
        using var raw = new MemoryStream();
        using var output = new StringWriter();
        using var error = new StringWriter();
        var terminal = new Terminal(stream, raw, output, error, Color: false, folder.Path, () => new DateOnly(2026, 11, 24));
        var status = CommandLine.Run(arguments, terminal, new FakeEngine(), CancellationToken.None);
        return (status, output.ToString(), error.ToString());
    }
}
