using System.IO.Compression;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>The thin client for VS Code, as <c>tests/run</c> has built and packaged it.</summary>
public sealed class VsCodeTests
{
    private static readonly string Package = Path.Combine(Repository.Root, "editors", "vscode", "techlint.vsix");

    [Fact]
    public void The_package_holds_a_client_and_nothing_else()
    {
        Assert.SkipUnless(File.Exists(Package), "the extension was not packaged");
        using var archive = ZipFile.OpenRead(Package);
        archive.Entries.Select(entry => entry.FullName).Should().BeEquivalentTo(
            "[Content_Types].xml", "extension.vsixmanifest", "extension/package.json", "extension/readme.md",
            "extension/language-configuration.json", "extension/dist/extension.js");
        using var reader = new StreamReader(archive.GetEntry("extension/dist/extension.js")!.Open());
        var code = reader.ReadToEnd();
        code.Should().Contain("techlint").And.Contain("\"lsp\"");

        // What is checked is checked in the server: no rule's name, no limit in here.
        code.Should().NotContain("index-offset-against-thickness").And.NotContain("iso-13588");
    }
}
