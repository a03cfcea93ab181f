using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>Every feature of the real engine tells the same places, in whatever units the client counts.</summary>
public sealed class EncodingTests
{
    public static TheoryData<string> Texts => ["plain", "line-ends", "mark"];

    [Theory]
    [MemberData(nameof(Texts))]
    public async Task Every_answer_means_the_same_places_in_every_encoding(string kind)
    {
        var seen = new Dictionary<string, List<string>>();
        foreach (var encoding in new[] { "utf-16", "utf-8", "utf-32" })
        {
            await using var session = await FeatureSession.StartAsync(Capabilities(encoding), text => Hard(text, kind));
            var text = new ClientText(session.Text, encoding);
            var answers = new List<string>();
            foreach (var place in new[] { "probe: pa-5", "thickness: ", "index-offset: 3", "requirements: [iso", "id: sector", "wave: tra" })
            {
                var at = session.Text.IndexOf(place, StringComparison.Ordinal);
                at.Should().BePositive(place);
                foreach (var (method, result) in await FeatureRequests.AskAllAsync(
                    session.Client, session.Capabilities, session.Uri, text.PositionOf(at + place.Length), text.PositionOf(at + place.Length + 1)))
                {
                    FeatureRequests.Fault(method, result, session.Uri, text).Should().BeNull();
                    answers.Add(method + " " + FeatureRequests.WithOffsets(method, result, uri => TextOf(session, uri, encoding), session.Uri)?.ToJsonString());
                }
            }

            answers.Should().NotContain(answer => answer.Contains(":-1", StringComparison.Ordinal), "a position lies between characters");
            seen[encoding] = answers;
        }

        seen["utf-16"].Count.Should().BeGreaterThan(100);
        seen["utf-8"].Should().Equal(seen["utf-16"]);
        seen["utf-32"].Should().Equal(seen["utf-16"]);
    }

    [Theory]
    [InlineData("utf-8")]
    [InlineData("utf-16")]
    [InlineData("utf-32")]
    public async Task Edits_at_hard_places_leave_the_text_that_was_typed(string encoding)
    {
        await using var session = await FeatureSession.StartAsync(Capabilities(encoding), text => Hard(text, "line-ends"));
        var text = session.Text;
        var random = new Random(20261125);
        string[] words = ["é", "😀", "語", "\r\n", "x: ", " ", "", "# µ\r\n"];
        for (var version = 2; version <= 400; version++)
        {
            var start = Whole(text, random.Next(text.Length + 1));
            var end = Whole(text, Math.Min(text.Length, start + random.Next(6)));
            var client = new ClientText(text, encoding);
            var word = words[random.Next(words.Length)];
            await session.Client.ChangeAsync(session.Uri, version, new JsonObject
            {
                ["range"] = new JsonObject { ["start"] = client.PositionOf(start), ["end"] = client.PositionOf(end) }, ["text"] = word,
            });
            text = text[..start] + word + text[end..];
        }

        var position = RawLspClient.Position(0, 0);
        var edited = await FeatureRequests.AskAllAsync(session.Client, session.Capabilities, session.Uri, position);
        await session.Client.ChangeAsync(session.Uri, 1000, RawLspClient.WholeText(text));
        var whole = await FeatureRequests.AskAllAsync(session.Client, session.Capabilities, session.Uri, position);
        edited.Select(answer => answer.Result?.ToJsonString()).Should().Equal(whole.Select(answer => answer.Result?.ToJsonString()));
        foreach (var (method, result) in edited) FeatureRequests.Fault(method, result, session.Uri, new ClientText(text, encoding)).Should().BeNull();
    }

    private static string Capabilities(string encoding) =>
        $$"""{"general":{"positionEncodings":["{{encoding}}"]},"textDocument":{"diagnostic":{} },"workspace":{"diagnostics":{"refreshSupport":true} } }""";

    /// <summary>Characters of two, three and four bytes before, in and behind what the features speak of.</summary>
    private static string Hard(string text, string kind)
    {
        var hard = text
            .Replace("index-offset: ", "index-offset:  ", StringComparison.Ordinal).Replace("index-offset:  3", "index-offset: 3", StringComparison.Ordinal)
            .Replace("- {id: sector", "- {note: \"é😀語\", id: sector", StringComparison.Ordinal)
            .Replace("setups:", "# 😀 é\nsetups:", StringComparison.Ordinal);
        return kind switch
        {
            "line-ends" => hard.Replace("\n", "\r\n", StringComparison.Ordinal),
            "mark" => "\uFEFF" + hard,
            _ => hard,
        };
    }

    private static ClientText TextOf(FeatureSession session, string uri, string encoding)
    {
        if (uri == session.Uri) return new ClientText(session.Text, encoding);
        return new ClientText(File.ReadAllText(new Uri(uri).LocalPath), encoding);
    }

    /// <summary>A place between characters and not inside a line's end.</summary>
    private static int Whole(string text, int at) =>
        at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || (text[at - 1] == '\r' && text[at] == '\n')) ? at - 1 : at;
}
