using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Engine.Formatting;
using TechLint.Syntax;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>The server's formatting is that of <c>techlint format</c>: both are held against each other here.</summary>
public sealed class FormattingTests
{
    public static TheoryData<string> Samples() =>
        [.. Directory.EnumerateFiles(FeatureSession.Samples, "*.yaml", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(FeatureSession.Samples, file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task Every_sample_and_a_messed_up_copy_come_out_as_from_the_command_line(string sample)
    {
        await using var session = await FeatureSession.StartAsync();
        var path = Path.Combine(FeatureSession.Samples, sample);
        var uri = new Uri(path).AbsoluteUri;
        var text = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        await session.Client.OpenAsync(uri, text);
        var version = 1;
        foreach (var mess in new[] { text, Messed(text), Messed(text).ReplaceLineEndings("\r\n") })
        {
            await session.Client.ChangeAsync(uri, ++version, RawLspClient.WholeText(mess));
            var edits = await session.AskAsync("textDocument/formatting", Parameters(uri));
            var expected = TextFormat.Of(new SourceText(Path.GetFileName(path), mess), reorder: false);
            if (expected is null) edits.Should().BeNull("a text that is no sound YAML is left as it is");
            else ProtocolEdits.Apply(mess, edits!.AsArray()).Should().Be(expected);
        }

        if (TextFormat.Of(new SourceText(Path.GetFileName(path), text), reorder: false) is not null) Messed(text).Should().NotBe(text);
    }

    [Fact]
    public async Task A_range_gets_the_edits_inside_it_and_never_another_meaning()
    {
        await using var session = await FeatureSession.StartAsync(edit: Messed);
        var whole = (await session.AskAsync("textDocument/formatting", Parameters(session.Uri)))!.AsArray().Select(edit => edit!.ToJsonString()).ToHashSet(StringComparer.Ordinal);
        var lines = session.Text.Split('\n');
        var seen = 0;
        var before = YamlReader.Read(new SourceText("a.technique.yaml", session.Text));
        for (var first = 0; first < lines.Length; first += 3)
        {
            var last = Math.Min(lines.Length - 1, first + 7);
            var parameters = Parameters(session.Uri);
            parameters["range"] = new JsonObject { ["start"] = RawLspClient.Position(first, 0), ["end"] = RawLspClient.Position(last, lines[last].Length) };
            var edits = (await session.AskAsync("textDocument/rangeFormatting", parameters))!.AsArray();
            edits.Select(edit => edit!.ToJsonString()).Should().BeSubsetOf(whole);
            edits.All(edit => (int)edit!["range"]!["start"]!["line"]! >= first && (int)edit["range"]!["end"]!["line"]! <= last).Should().BeTrue();
            seen += edits.Count;
            var after = YamlReader.Read(new SourceText("a.technique.yaml", ProtocolEdits.Apply(session.Text, edits)));
            TechLint.Syntax.Formatting.Formatter.SaysTheSame(before, after).Should().BeTrue();
        }

        seen.Should().BeGreaterThan(20);
    }

    [Theory]
    [InlineData(true, 1, true)]
    [InlineData(true, 2, false)]
    [InlineData(false, 1, false)]
    public async Task A_save_formats_where_it_was_asked_for_and_the_user_saves(bool asked, int reason, bool formats)
    {
        await using var session = await FeatureSession.StartAsync("""{"textDocument":{"synchronization":{"willSaveWaitUntil":true}}}""", Messed);
        await session.Client.NotifyAsync("workspace/didChangeConfiguration", new JsonObject { ["settings"] = new JsonObject { ["techlint"] = new JsonObject { ["formatOnSave"] = asked } } });
        var parameters = session.Document();
        parameters["reason"] = reason;
        var edits = await session.AskAsync("textDocument/willSaveWaitUntil", parameters);
        (edits is not null).Should().Be(formats);
        if (formats) ProtocolEdits.Apply(session.Text, edits!.AsArray()).Should().Be(TextFormat.Of(new SourceText("a.technique.yaml", session.Text), reorder: false));
    }

    [Fact]
    public async Task Waiting_before_a_save_is_announced_only_to_a_client_that_asks()
    {
        foreach (var asks in new[] { true, false })
        {
            await using var session = new ServerSession();
            var parameters = session.Client.InitializeParams("file:///work");
            parameters["capabilities"] = new JsonObject { ["textDocument"] = new JsonObject { ["synchronization"] = new JsonObject { ["willSaveWaitUntil"] = asks } } };
            var capabilities = (await session.Client.RequestAsync("initialize", parameters))["result"]!["capabilities"]!;
            ((bool?)capabilities["textDocumentSync"]!["willSaveWaitUntil"]).Should().Be(asks ? true : null);
            ((bool?)capabilities["documentFormattingProvider"]).Should().BeTrue();
        }
    }

    [Fact]
    public async Task Keys_are_put_in_the_canonical_order_by_an_action_that_does_what_reorder_does()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => "# first of all\nrevision: B\n" + text.Replace("revision: B\n", "", StringComparison.Ordinal)
            .Replace("  form: pipe\n", "", StringComparison.Ordinal).Replace("  material: carbon-steel\n", "  material: carbon-steel\n  form: pipe\n", StringComparison.Ordinal));
        var place = session.Document();
        place["range"] = new JsonObject { ["start"] = RawLspClient.Position(0, 0), ["end"] = RawLspClient.Position(0, 0) };
        place["context"] = new JsonObject { ["diagnostics"] = new JsonArray(), ["only"] = new JsonArray("refactor.rewrite") };
        var action = (await session.AskAsync("textDocument/codeAction", place))!.AsArray().Should().ContainSingle(one => (string?)one!["title"] == "Put the keys in the canonical order").Subject!;
        var edits = action["edit"]!["changes"]![session.Uri]!.AsArray();
        ProtocolEdits.Apply(session.Text, edits).Should().Be(TextFormat.Of(new SourceText("a.technique.yaml", session.Text), reorder: true));
    }

    /// <summary>Extra spaces where YAML allows them, and trailing ones.</summary>
    private static string Messed(string text) => string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select((line, i) =>
        line.Contains('"', StringComparison.Ordinal) || line.Contains('|', StringComparison.Ordinal) || line.Contains('#', StringComparison.Ordinal) || line.TrimStart().Length == 0 ? line
        : (i % 3) switch { 0 => line.Replace(", ", " ,  ", StringComparison.Ordinal), 1 => line.Replace(": ", ":   ", StringComparison.Ordinal) + "  ", _ => line.Replace("{", "{ ", StringComparison.Ordinal) }));

    private static JsonObject Parameters(string uri) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri }, ["options"] = new JsonObject { ["tabSize"] = 4, ["insertSpaces"] = false },
    };
}
