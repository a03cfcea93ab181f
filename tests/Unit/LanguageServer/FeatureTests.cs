using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class FeatureTests
{
    [Theory]
    [InlineData("wave: transverse", "wave: tr", "transverse", "longitudinal")]
    [InlineData("probe: pa-5-32", "probe: ", "pa-5-32", "el-5-6")]
    [InlineData("run-on: 50 mm", "run-on: 50", "50 mm", "50 in")]
    [InlineData("reference: side-drilled", "reference: ", "side-drilled", "lateral-wave")]
    [InlineData("frame: frame-four", "frame: ", "frame-four", "frame-four")]
    [InlineData("requirements: [", "requirements: [", "glenmarrow-owner", "iso-13588-level-b")]
    public async Task Values_units_and_names_are_offered_in_place(string place, string upTo, params string[] expected)
    {
        await using var session = await FeatureSession.StartAsync();
        var labels = await LabelsAsync(session, session.At(place, upTo));
        labels.Should().Contain(expected);
    }

    [Fact]
    public async Task Missing_keys_are_offered_the_required_ones_first()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("  sides: both\n", "  s\n", StringComparison.Ordinal)
            .Replace("process: submerged-arc", "pro", StringComparison.Ordinal));
        var list = (await session.AskAsync("textDocument/completion", session.At("\n  s\n", "\n  s")))!["items"]!.AsArray();
        var first = list.OrderBy(item => (string)item!["sortText"]!, StringComparer.Ordinal).First()!;
        ((string?)first["label"]).Should().Be("sides");
        ((string?)first["textEdit"]!["newText"]).Should().Be("sides: ");
        (await LabelsAsync(session, session.At("\n  pro", "\n  pro"))).Should().Contain("process").And.NotContain("joint");
    }

    [Fact]
    public async Task A_mapping_begun_in_braces_is_completed_though_nothing_closes_it()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace(
            "  - {id: lateral-wave,", "  - {id: new, me\n  - {id: lateral-wave,", StringComparison.Ordinal));
        (await LabelsAsync(session, session.At("{id: new, me"))).Should().Contain("method").And.NotContain("id");
    }

    [Fact]
    public async Task A_probe_leads_to_its_library_and_everything_that_names_it_is_found_and_renamed()
    {
        await using var session = await FeatureSession.StartAsync();
        var place = session.At("probe: pa-5-32", "pa-5");
        var definition = (await session.AskAsync("textDocument/definition", place))!.AsArray().Should().ContainSingle().Subject!;
        ((string?)definition["uri"]).Should().EndWith("samples/equipment/workshop.equipment.yaml");
        var references = (JsonObject)place.DeepClone();
        references["context"] = new JsonObject { ["includeDeclaration"] = true };
        (await session.AskAsync("textDocument/references", references))!.AsArray().Count.Should().BeGreaterThan(3);
        var rename = (JsonObject)place.DeepClone();
        rename["newName"] = "pa-renamed";
        var changes = (await session.AskAsync("textDocument/rename", rename))!["changes"]!.AsObject();
        changes.Count.Should().BeGreaterThan(1, "the library and its techniques are rewritten together");
        changes[session.Uri]!.AsArray().Count.Should().Be(2);
    }

    [Fact]
    public async Task A_beam_is_renamed_in_the_model_paths_of_waivers_too()
    {
        await using var session = await FeatureSession.StartAsync(edit: text =>
            text + "\nwaivers:\n  - {rule: volume-not-covered, at: setups/seam/beams/sector-left, reason: x, approved-by: y, until: 2027-01-01}\n");
        var rename = session.At("{id: sector-left", "{id: sect");
        rename["newName"] = "near-side";
        var edits = (await session.AskAsync("textDocument/rename", rename))!["changes"]![session.Uri]!.AsArray();
        edits.Should().HaveCount(2);
        edits.Select(edit => (string?)edit!["newText"]).Should().AllBe("near-side");
    }

    [Fact]
    public async Task Actions_mend_convert_and_begin_a_waiver()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("run-on: 50 mm", "run-on: 50", StringComparison.Ordinal));
        var titles = await ActionsAsync(session, session.At("run-on: 50", "run-on: 5"));
        titles.Should().Contain(title => title.Contains("50 mm", StringComparison.Ordinal));
        (await ActionsAsync(session, session.At("run-off: 50 mm", "run-off: 5"))).Should().Contain("Write 1.97 in");
        await using var moved = await FeatureSession.StartAsync(edit: text => text.Replace("index-offset: 34 mm", "index-offset: 24 mm", StringComparison.Ordinal));
        (await ActionsAsync(moved, moved.At("index-offset: 24 mm", "index-offset: 2"))).Should().Contain(title => title.StartsWith("Begin a waiver of ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Outline_folds_selections_tokens_links_hints_and_lenses_tell_what_is_there()
    {
        await using var session = await FeatureSession.StartAsync();
        (await session.AskAsync("textDocument/documentSymbol", session.Document()))!.ToJsonString().Should().Contain("\"sector-left\"").And.Contain("\"seam\"");
        (await session.AskAsync("textDocument/foldingRange", session.Document()))!.AsArray().Should().NotBeEmpty();
        (await session.AskAsync("textDocument/semanticTokens/full", session.Document()))!["data"]!.AsArray().Count.Should().BeGreaterThan(500);
        (await session.AskAsync("textDocument/documentLink", session.Document()))!.AsArray().Select(link => ((string)link!["target"]!).Split('/')[^1])
            .Should().Equal("glenmarrow-owner.requirements.yaml", "workshop.equipment.yaml");
        var lens = (await session.AskAsync("textDocument/codeLens", session.Document()))!.AsArray().Should().ContainSingle().Subject!;
        lens["command"].Should().BeNull("its text is worked out when it comes into sight");
        var resolved = (await session.AskAsync("codeLens/resolve", lens.DeepClone().AsObject()))!;
        resolved["command"]!.ToJsonString().Should().Contain("coverage at worst 100 %").And.Contain("mm/s");
        await session.AskAsync("workspace/executeCommand", new JsonObject { ["command"] = (string)resolved["command"]!["command"]!, ["arguments"] = resolved["command"]!["arguments"]!.DeepClone() });
        session.Client.ReceivedOf("window/showMessage").Should().ContainSingle().Which.ToJsonString().Should().Contain("Setup seam").And.Contain("near field").And.Contain("scan length");
        var range = session.Document();
        range["range"] = new JsonObject { ["start"] = RawLspClient.Position(0, 0), ["end"] = RawLspClient.Position(999, 0) };
        (await session.AskAsync("textDocument/inlayHint", range))!.ToJsonString().Should().Contain("half skip").And.Contain("near field").And.Contain("exit ").And.Contain("at most");
        (await session.AskAsync("workspace/symbol", new JsonObject { ["query"] = "pa-5" }))!.ToJsonString().Should().Contain("pa-5-32");
        (await session.AskAsync("textDocument/hover", session.At("probe: pa-5-32", "pa-5")))!.ToJsonString().Should().Contain("pitch");
        (await session.AskAsync("textDocument/hover", session.At("requirements: [iso-13588-level-b", "iso-13")))!.ToJsonString().Should().Contain("volume-covered");
    }

    [Fact]
    public async Task Diagnostics_are_pulled_by_a_client_that_can_and_an_unchanged_result_is_not_sent_again()
    {
        await using var session = await FeatureSession.StartAsync(
            """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true}}}""", text => text.Replace("run-on: 50 mm", "run-on: 50", StringComparison.Ordinal));
        var report = (await session.AskAsync("textDocument/diagnostic", session.Document()))!;
        ((string?)report["kind"]).Should().Be("full");
        report["items"]!.ToJsonString().Should().Contain("unit-missing");
        var again = session.Document();
        again["previousResultId"] = (string?)report["resultId"];
        (await session.AskAsync("textDocument/diagnostic", again))!.ToJsonString().Should().StartWith("{\"kind\":\"unchanged\"");
        var whole = (await session.AskAsync("workspace/diagnostic", new JsonObject { ["previousResultIds"] = new JsonArray() }))!["items"]!.AsArray();
        whole.Select(item => (string?)item!["uri"]).Should().Contain(session.Uri).And.Contain(uri => uri!.EndsWith("workshop.equipment.yaml", StringComparison.Ordinal));
        session.Client.ReceivedOf("textDocument/publishDiagnostics").Should().BeEmpty();
    }

    [Fact]
    public async Task At_prefixes_of_a_sample_every_request_is_answered_and_no_position_lies_outside()
    {
        await using var session = await FeatureSession.StartAsync();
        var version = 1;
        for (var length = 0; length < session.Text.Length; length += 97)
        {
            var text = session.Text[..length];
            await session.Client.ChangeAsync(session.Uri, ++version, RawLspClient.WholeText(text));
            await AskEverythingAsync(session, text, length);
        }
    }

    [Fact]
    public async Task After_random_edits_every_request_is_answered_and_the_text_is_the_one_that_was_typed()
    {
        await using var session = await FeatureSession.StartAsync();
        var random = new Random(20261125);
        var text = session.Text;
        string[] words = ["{", "}", "[", ": ", "- ", "\"", "\n", "  ", "#", "5 mm", "id: x", "&a ", "*a ", "é", "😀", ""];
        for (var version = 2; version <= 1500; version++)
        {
            var start = random.Next(text.Length + 1);
            var end = Math.Min(text.Length, start + random.Next(4));
            if (Splits(text, start) || Splits(text, end)) continue;
            var word = words[random.Next(words.Length)];
            await session.Client.ChangeAsync(session.Uri, version, RawLspClient.Change(LineOf(text, start), ColumnOf(text, start), LineOf(text, end), ColumnOf(text, end), word));
            text = text[..start] + word + text[end..];
            if (version % 50 != 0) continue;
            var offset = random.Next(text.Length + 1);
            await AskEverythingAsync(session, text, Splits(text, offset) ? offset - 1 : offset);
        }

        // The same text sent whole gives the same tokens: nothing of the edits was lost or misplaced.
        var edited = (await session.AskAsync("textDocument/semanticTokens/full", session.Document()))!.ToJsonString();
        await session.Client.ChangeAsync(session.Uri, 9000, RawLspClient.WholeText(text));
        (await session.AskAsync("textDocument/semanticTokens/full", session.Document()))!.ToJsonString().Should().Be(edited);
    }

    private static bool Splits(string text, int at) => at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || (text[at - 1] == '\r' && text[at] == '\n'));

    private static int LineOf(string text, int at) => text.AsSpan(0, at).Count('\n');

    private static int ColumnOf(string text, int at) => at == 0 ? 0 : at - (text.LastIndexOf('\n', at - 1) + 1);

    internal static async Task AskEverythingAsync(FeatureSession session, string text, int offset)
    {
        var lines = text.Split('\n');
        var line = text.AsSpan(0, offset).Count('\n');
        var position = RawLspClient.Position(line, offset - (offset == 0 ? 0 : text.LastIndexOf('\n', offset - 1) + 1));
        foreach (var method in new[] { "completion", "hover", "definition", "documentHighlight", "prepareRename", "signatureHelp", "documentSymbol", "foldingRange", "semanticTokens/full", "documentLink", "codeLens", "inlayHint", "codeAction", "references", "selectionRange" })
        {
            var parameters = session.Document();
            parameters["position"] = position.DeepClone();
            parameters["positions"] = new JsonArray(position.DeepClone());
            parameters["range"] = new JsonObject { ["start"] = position.DeepClone(), ["end"] = position.DeepClone() };
            if (method is "codeAction") parameters["context"] = new JsonObject { ["diagnostics"] = new JsonArray() };
            if (method is "references") parameters["context"] = new JsonObject { ["includeDeclaration"] = true };
            var answer = await session.Client.RequestAsync("textDocument/" + method, parameters);

            // A name that cannot be renamed is refused, with the reason; nothing else may fail.
            if (answer["error"] is { } error) (method, (int)error["code"]!).Should().Be(("prepareRename", -32803), error.ToJsonString());
            InRange(answer["result"], lines, session.Uri, isOther: false);
        }
    }

    private static void InRange(JsonNode? node, string[] lines, string uri, bool isOther)
    {
        if (node is JsonArray list)
        {
            foreach (var item in list) InRange(item, lines, uri, isOther);
        }
        else if (node is JsonObject map)
        {
            if (!isOther && map["line"] is { } line && map["character"] is { } character)
            {
                ((int)line).Should().BeInRange(0, lines.Length - 1);
                ((int)character).Should().BeInRange(0, lines[(int)line].TrimEnd('\r').Length);
            }

            var elsewhere = isOther || (map["uri"] is { } address && (string?)address != uri);
            foreach (var (key, value) in map) InRange(value, lines, uri, elsewhere || (key is not "changes" && key.StartsWith("file:", StringComparison.Ordinal) && key != uri));
        }
    }

    private static async Task<List<string>> LabelsAsync(FeatureSession session, JsonObject place) =>
        [.. ((await session.AskAsync("textDocument/completion", place))?["items"]?.AsArray() ?? []).Select(item => (string)item!["label"]!)];

    private static async Task<List<string>> ActionsAsync(FeatureSession session, JsonObject place)
    {
        var position = place["position"]!;
        place["range"] = new JsonObject { ["start"] = position.DeepClone(), ["end"] = position.DeepClone() };
        place["context"] = new JsonObject { ["diagnostics"] = new JsonArray() };
        return [.. (await session.AskAsync("textDocument/codeAction", place))!.AsArray().Select(action => (string)action!["title"]!)];
    }
}
