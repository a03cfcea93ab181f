using System.Text.Json.Nodes;
using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class RenameTests
{
    private const int RequestFailed = -32803;

    [Theory]
    [InlineData("probe: pa-5-32", "pa-", "Big", "an id is made of small letters")]
    [InlineData("probe: pa-5-32", "pa-", "", "an id is made of small letters")]
    [InlineData("probe: pa-5-32", "pa-", "pa-4-32", "pa-4-32 is taken already in equipment/workshop.equipment.yaml")]
    [InlineData("{id: sector-left", "{id: sect", "sector-right", "sector-right is taken already in techniques/gm-ut-014.technique.yaml")]
    [InlineData("technique: GM-UT-014", "technique: GM", "GM-UT-021", "GM-UT-021 is taken already in techniques/gm-ut-021.technique.yaml")]
    [InlineData("{station: 1", "{station: ", "7", "a station is a number of the frame")]
    [InlineData("iso-13588-level-b", "iso", "mine", "is not defined in this workspace")]
    public async Task What_cannot_be_is_refused_with_the_reason(string place, string upTo, string newName, string reason)
    {
        await using var session = await FeatureSession.StartAsync();
        var rename = session.At(place, upTo);
        rename["newName"] = newName;
        var error = (await session.Client.RequestAsync("textDocument/rename", rename))["error"]!;
        ((int)error["code"]!).Should().Be(RequestFailed);
        ((string?)error["message"]).Should().Contain(reason);
    }

    [Fact]
    public async Task The_range_offered_is_the_name_alone_quotes_left_out()
    {
        await using var session = await FeatureSession.StartAsync(edit: text => text.Replace("probe: pa-5-32", "probe: \"pa-5-32\"", StringComparison.Ordinal));
        var place = session.At("probe: \"pa-5-32\"", "probe: \"pa");
        var answer = (await session.AskAsync("textDocument/prepareRename", place))!;
        ((string?)answer["placeholder"]).Should().Be("pa-5-32");
        var (start, end) = (answer["range"]!["start"]!, answer["range"]!["end"]!);
        ((int)end["character"]! - (int)start["character"]!).Should().Be(7);
        session.Text.Split('\n')[(int)start["line"]!].Substring((int)start["character"]!, 7).Should().Be("pa-5-32");
        (await session.Client.RequestAsync("textDocument/prepareRename", session.At("{station: 1", "{station: ")))["error"]!["message"]!.ToJsonString().Should().Contain("station");
    }

    [Fact]
    public async Task A_requirement_set_is_renamed_in_its_file_and_wherever_it_is_named()
    {
        await using var session = await FeatureSession.StartAsync();
        var rename = session.At("glenmarrow-owner", "glen");
        rename["newName"] = "penstock-owner";
        var changes = (await session.AskAsync("textDocument/rename", rename))!["changes"]!.AsObject();
        changes.Select(change => change.Key).Should().Contain(key => key.EndsWith("glenmarrow-owner.requirements.yaml", StringComparison.Ordinal)).And.Contain(session.Uri);
        ProtocolEdits.Apply(session.Text, changes[session.Uri]!.AsArray()).Should().Contain("iso-10863-level-b, penstock-owner]").And.NotContain("glenmarrow-owner");
    }
}
