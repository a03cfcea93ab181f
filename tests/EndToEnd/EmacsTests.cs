using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>A real editor, headless, with the set-up that the repository offers for it.</summary>
public sealed class EmacsTests
{
    public static TheoryData<string> All => Executables.All;

    [Theory]
    [MemberData(nameof(All))]
    public void Emacs_shows_hovers_completes_mends_and_formats(string executable)
    {
        Assert.SkipUnless(Tools.Has("emacs"), "Emacs is not installed");
        Assert.SkipUnless(HasEglot, "Emacs has no eglot");
        using var workspace = new EditorWorkspace();
        var environment = new Dictionary<string, string>
        {
            ["TECHLINT_CMD"] = Executables.PathOf(executable),
            ["TECHLINT_ELISP"] = Path.Combine(Repository.Root, "editors", "emacs"),
            ["TECHLINT_FILE"] = workspace.PathOf(EditorWorkspace.Technique),
            ["TECHLINT_RESULT"] = workspace.PathOf("result.json"),
            ["HOME"] = workspace.Folder,
        };
        var outcome = Outcome.OfProgram(
            "emacs", workspace.Folder, environment, null, "-Q", "--batch", "-l", Path.Combine(Repository.EndToEnd, "Emacs", "session.el"));

        File.Exists(workspace.PathOf("result.json")).Should().BeTrue(outcome.Error);
        var seen = (JsonObject)JsonNode.Parse(File.ReadAllText(workspace.PathOf("result.json")))!;
        ((string?)seen["problem"]).Should().BeNull(outcome.Error);
        outcome.Status.Should().Be(0, outcome.Error);
        Texts(seen["diagnostics"]).Should().ContainSingle().Which.Should().Contain("unit-missing");
        ((string?)seen["hover"]).Should().Contain("Index offset");
        Texts(seen["completions"]).Should().Contain("coating");
        Texts(seen["fixes"]).Should().Contain("Write 16 mm");
        ((string)seen["text"]!).Should().Contain("index-offset: 16 mm}\n    beams:").And.Contain("\ntechnique: ", "the four spaces are formatted away");
        ((bool)seen["stopped"]!).Should().BeTrue();
    }

    /// <summary>Built in from Emacs 29 on; before that where Debian puts its package.</summary>
    private static bool HasEglot => Directory.Exists("/usr/share/emacs/site-lisp/elpa")
        && Directory.EnumerateDirectories("/usr/share/emacs/site-lisp/elpa", "eglot-*").Any()
        || Outcome.OfProgram("emacs", Path.GetTempPath(), new Dictionary<string, string>(), null, "-Q", "--batch", "--eval", "(require 'eglot)").Status == 0;

    private static string[] Texts(JsonNode? list) => [.. ((JsonArray?)list ?? []).Select(text => (string)text!)];
}
