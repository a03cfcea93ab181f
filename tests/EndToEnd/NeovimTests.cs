using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>A real editor, headless, with the set-up that the repository offers for it.</summary>
public sealed class NeovimTests
{
    public static TheoryData<string> All => Executables.All;

    [Theory]
    [MemberData(nameof(All))]
    public void Neovim_shows_the_finding_hovers_follows_an_edit_completes_and_mends(string executable)
    {
        Assert.SkipUnless(Tools.Has("nvim"), "Neovim is not installed");
        using var workspace = new TemporaryWorkspace();
        var (text, line, character) = workspace.Flawed();
        workspace.Write(TemporaryWorkspace.Technique, text);
        var environment = new Dictionary<string, string>
        {
            ["TECHLINT_CMD"] = Executables.PathOf(executable),
            ["TECHLINT_LUA"] = Path.Combine(Repository.Root, "editors", "neovim"),
            ["TECHLINT_FILE"] = workspace.PathOf(TemporaryWorkspace.Technique),
            ["TECHLINT_RESULT"] = workspace.PathOf("result.json"),
            ["XDG_STATE_HOME"] = workspace.PathOf("state"),
            ["XDG_CACHE_HOME"] = workspace.PathOf("cache"),
            ["XDG_DATA_HOME"] = workspace.PathOf("data"),
        };
        var outcome = Outcome.OfProgram(
            "nvim", workspace.Folder, environment, null,
            "--headless", "-u", "NONE", "-i", "NONE", "-n", "-S", Path.Combine(Repository.EndToEnd, "Neovim", "session.lua"));

        File.Exists(workspace.PathOf("result.json")).Should().BeTrue(outcome.Error);
        var seen = (JsonObject)JsonNode.Parse(workspace.Read("result.json"))!;
        ((string?)seen["problem"]).Should().BeNull();
        outcome.Status.Should().Be(0, outcome.Error);
        var diagnostics = ((JsonArray)seen["diagnostics"]!).Select(found => (JsonObject)found!).ToArray();
        diagnostics.Should().Contain(found => (string)found["code"]! == "index-offset-against-thickness" && (int)found["severity"]! == 1);
        diagnostics.Should().Contain(found => (int)found["line"]! == line && (int)found["column"]! == character);
        ((string?)seen["hover"]).Should().NotBeNullOrEmpty();
        ((JsonArray)seen["completions"]!).Select(label => (string)label!).Should().Contain("coating");
        ((JsonArray)seen["fixes"]!).Select(title => (string)title!).Should().Contain("Write 20 mm");
    }
}
