using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>An editor in a browser, over a websocket on loopback. The pictures stay in artifacts/browser, to be looked at.</summary>
public sealed class BrowserTests
{
    public static TheoryData<string> All => Executables.All;

    [Theory]
    [MemberData(nameof(All))]
    public void A_browser_editor_shows_hovers_completes_and_mends(string executable)
    {
        var browser = new[] { "chromium", "chromium-browser", "google-chrome" }.FirstOrDefault(Tools.Has);
        Assert.SkipWhen(browser is null, "no Chromium is installed");
        using var workspace = new EditorWorkspace();
        var pictures = Directory.CreateDirectory(Path.Combine(Repository.Root, "artifacts", "browser")).FullName;
        var seen = Node.Run(
            "Browser/session.mjs", Executables.PathOf(executable), workspace.Folder, EditorWorkspace.Technique, pictures, Tools.PathOf(browser!));

        ((string?)seen["problem"]).Should().BeNull();
        ((string?)seen["marked"]).Should().Be("16");
        ((string?)seen["tooltip"]).Should().Contain("has no unit");
        ((string?)seen["hover"]).Should().Contain("Heat-affected zone");
        ((JsonArray)seen["completions"]!).Select(text => (string)text!).Should().Contain(text => text.StartsWith("coating", StringComparison.Ordinal));
        ((JsonArray)seen["fixes"]!).Select(text => (string)text!).Should().Contain("Write 16 mm");
        ((JsonArray)seen["left"]!).Should().BeEmpty();
        ((int)seen["exit"]!).Should().Be(0);
    }
}
