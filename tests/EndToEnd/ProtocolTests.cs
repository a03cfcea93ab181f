using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>
/// The official client library drives a whole session, and every message of the server is held against schemas made from the official protocol
/// package's own types.
/// </summary>
public sealed class ProtocolTests
{
    public static TheoryData<string, string> Clients => Executables.With("full", "utf8", "bare");

    [Theory]
    [MemberData(nameof(Clients))]
    public void Every_message_is_of_the_protocol_s_own_form(string executable, string client)
    {
        using var workspace = new EditorWorkspace();
        var seen = Node.Run("Protocol/session.mjs", Executables.PathOf(executable), workspace.Folder, EditorWorkspace.Technique, client);

        seen.Faults("faults").Should().BeEmpty();
        var answers = (JsonObject)seen["answers"]!;
        ((int)answers["exit"]!).Should().Be(0);
        ((string)answers["positions"]!).Should().Be(client == "utf8" ? "utf-8" : "utf-16");
        answers.Where(answer => answer.Value is JsonValue value && value.TryGetValue<string>(out var text) && text.StartsWith("error", StringComparison.Ordinal))
            .Select(answer => answer.Key).Should().Equal("textDocument/noSuchThing");
    }
}
