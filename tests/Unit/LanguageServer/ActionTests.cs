using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Engine.Actions;
using TechLint.Rules.Findings;
using TechLint.Syntax;
using TechLint.Tests.Shared;
using TechLint.Tests.Unit.Engine.Editing;
using TechLint.Ultrasonics.Quantities;
using Xunit;
using LspActions = TechLint.LanguageServer.Features.CodeActions;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class ActionTests
{
    private const string Found = "index-offset: 24 mm";

    [Theory]
    [InlineData("")]
    [InlineData("waivers:\n")]
    [InlineData("waivers: []\n")]
    [InlineData("waivers:\n  - {rule: grating-lobe, at: setups/seam, reason: x, approved-by: y, until: 2027-01-01} # kept\n")]
    [InlineData("waivers: [{rule: grating-lobe, at: setups/seam, reason: x, approved-by: y, until: 2027-01-01}]\n")]
    [InlineData("waivers:\n- rule: grating-lobe\n  at: setups/seam\n  reason: x\n  approved-by: y\n  until: 2027-01-01\n")]
    public async Task A_waiver_that_is_begun_joins_the_others_and_hides_nothing(string before)
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("index-offset: 34 mm", Found, StringComparison.Ordinal).TrimEnd() + "\n" + before);
        var action = (await ActionsAsync(session, session.At(Found, "index-offset: 2"))).First(one => ((string)one!["title"]!).StartsWith("Begin a waiver of ", StringComparison.Ordinal))!;
        var text = ProtocolEdits.Apply(session.Text, action["edit"]!["changes"]![session.Uri]!.AsArray());
        var sample = SampleText.Of(SampleText.Technique, _ => text);
        var tree = sample.Snapshot.TreeOf(sample.Path)!;
        tree.Problems.Should().NotContain(problem => problem.Code == "yaml-syntax");
        var waivers = ((MappingNode)tree.Root!).Find("waivers")!.Value.Should().BeOfType<SequenceNode>().Subject;
        waivers.Items.Length.Should().Be(before.Contains("grating", StringComparison.Ordinal) ? 2 : 1);
        var rule = ((ScalarNode)((MappingNode)waivers.Items[^1]).Find("rule")!.Value).Value;
        var after = Checker.Check(sample.Snapshot, [sample.Path], 1, CancellationToken.None).Findings;
        after.Should().Contain(finding => finding.Finding.Rule == rule && finding.Counts, "nobody has answered for it yet");
        after.Select(finding => finding.Finding.Rule).Should().Contain("waiver-unapproved");
    }

    /// <summary>No rule has a safe fix yet: the choice itself is tested, with findings made by hand.</summary>
    [Fact]
    public void All_safe_fixes_are_the_first_of_each_finding_and_never_over_another()
    {
        TextEdit Edit(int start, int length) => new("a.technique.yaml", new TextSpan(start, length), "x");
        Finding Of(params Fix[] fixes) => new("unknown-key", Severity.Error, "a.technique.yaml", default, "", "", [], [], null, [], [.. fixes]);
        Fix Safe(params TextEdit[] edits) => new("safe", true, [.. edits]);
        Fix Unsafe(params TextEdit[] edits) => new("unsafe", false, [.. edits]);
        var edits = LspActions.SafeEdits([Of(Unsafe(Edit(0, 2)), Safe(Edit(10, 5), Edit(30, 1))), Of(Safe(Edit(12, 1))), Of(Safe(Edit(15, 3))), Of(Safe(Edit(20, 2)), Safe(Edit(50, 1))), Of(Unsafe(Edit(70, 1)))]);
        edits.Select(edit => edit.Span.Start).Should().Equal(10, 30, 20);
    }

    [Fact]
    public async Task Without_a_safe_fix_none_is_offered()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("run-on: 50 mm", "run-on: 50", StringComparison.Ordinal));
        var parameters = session.Document();
        parameters["range"] = new JsonObject { ["start"] = RawLspClient.Position(0, 0), ["end"] = RawLspClient.Position(500, 0) };
        parameters["context"] = new JsonObject { ["diagnostics"] = new JsonArray(), ["only"] = new JsonArray("source.fixAll") };
        (await session.AskAsync("textDocument/codeAction", parameters))!.AsArray().Should().BeEmpty("a unit is the author's to choose");
    }

    [Fact]
    public async Task A_client_that_sends_its_diagnostics_without_data_or_none_gets_the_same_fixes()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("run-on: 50 mm", "run-on: 50", StringComparison.Ordinal));
        var place = session.At("run-on: 50", "run-on: 5");
        var without = (await ActionsAsync(session, (JsonObject)place.DeepClone())).Select(action => (string)action!["title"]!).ToArray();
        var bare = new JsonObject { ["range"] = new JsonObject { ["start"] = place["position"]!.DeepClone(), ["end"] = place["position"]!.DeepClone() }, ["message"] = "x" };
        (await ActionsAsync(session, place, bare)).Select(action => (string)action!["title"]!).Should().Equal(without).And.Contain(title => title.Contains("50 mm", StringComparison.Ordinal));
    }

    /// <summary>There and back: each conversion parses as the same kind and stays within a tenth of half of the last digit that the author wrote.</summary>
    [Fact]
    public void A_conversion_keeps_its_meaning_both_ways()
    {
        var random = new Random(20261125);
        foreach (var unit in new[] { "mm", "in", "cm", "um", "ft", "m", "degC", "degF", "m/s", "mm/us", "in/us", "km/s", "mm/s", "in/s" })
        {
            for (var i = 0; i < 60; i++)
            {
                var digits = random.Next(4);
                var written = $"{Math.Round((decimal)random.NextDouble() * 900, digits).ToString("F" + digits, System.Globalization.CultureInfo.InvariantCulture)} {unit}";
                var sample = SampleText.Of(SampleText.Technique, text => text.Replace("run-on: 50 mm", "run-on: " + written, StringComparison.Ordinal));
                var fixes = UnitActions.At(sample.Snapshot, sample.Path, sample.At("run-on: " + written, "run-on: "));
                fixes.Should().NotBeEmpty(written);
                var original = QuantityParser.Parse(written)!.Value;
                foreach (var edit in fixes.Select(fix => fix.Edits[0]))
                {
                    var converted = QuantityParser.Parse(edit.NewText)!.Value;
                    converted.Kind.Should().Be(original.Kind);
                    var back = original.Unit.FromBase(converted.Exact);
                    var tolerance = 0.05m / (decimal)Math.Pow(10, digits);
                    Math.Abs(back - original.Value).Should().BeLessThanOrEqualTo(tolerance, $"{written} became {edit.NewText}");
                }
            }
        }
    }

    private static async Task<JsonArray> ActionsAsync(FeatureSession session, JsonObject place, JsonObject? diagnostic = null)
    {
        var position = place["position"]!;
        place["range"] = new JsonObject { ["start"] = position.DeepClone(), ["end"] = position.DeepClone() };
        place["context"] = new JsonObject { ["diagnostics"] = diagnostic is null ? new JsonArray() : new JsonArray(diagnostic) };
        return (await session.AskAsync("textDocument/codeAction", place))!.AsArray();
    }
}
