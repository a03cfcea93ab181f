using System.Text;
using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>What a list looks like to clients of different abilities.</summary>
public sealed class CompletionFormTests
{
    [Fact]
    public async Task A_shared_range_is_sent_only_to_a_client_that_lists_it()
    {
        foreach (var lists in new[] { true, false })
        {
            await using var session = await FeatureSession.StartAsync(lists ? """{"textDocument":{"completion":{"completionList":{"itemDefaults":["editRange"]}}}}""" : "{}");
            var list = (await session.AskAsync("textDocument/completion", session.At("wave: transverse", "wave: tr")))!;
            (list["itemDefaults"]?["editRange"] is not null).Should().Be(lists);
            list["items"]!.AsArray().Should().NotBeEmpty();
            foreach (var item in list["items"]!.AsArray())
            {
                (item!["textEdit"] is null).Should().Be(lists);
                (item["textEditText"] is null).Should().Be(!lists);
            }
        }
    }

    [Fact]
    public async Task Ranges_are_counted_in_bytes_for_a_client_that_counts_bytes()
    {
        await using var session = await FeatureSession.StartAsync("""{"general":{"positionEncodings":["utf-8"]}}""", text => text.Replace("- {id: contact-left, scan: coupling-monitor, ", "- {id: contact-left, label: \"é😀\", scan: ", StringComparison.Ordinal));
        var line = session.Text.Split('\n').ToList().FindIndex(one => one.Contains("é😀", StringComparison.Ordinal));
        line.Should().BeGreaterThan(0);
        var text = session.Text.Split('\n')[line];
        var column = Encoding.UTF8.GetByteCount(text.AsSpan(0, text.IndexOf("scan: ", StringComparison.Ordinal) + 6));
        var list = (await session.AskAsync("textDocument/completion", RawLspClient.At(session.Uri, line, column)))!;
        var item = list["items"]!.AsArray().Should().ContainSingle(one => (string?)one!["label"] == "coupling-monitor").Subject!;
        ((int)item["textEdit"]!["range"]!["start"]!["character"]!).Should().Be(column);
    }

    [Fact]
    public async Task A_selection_grows_from_value_to_entry_to_line_to_all()
    {
        await using var session = await FeatureSession.StartAsync();
        var place = session.At("digitising-rate: 50 MHz", "digitising-rate: 5");
        var parameters = session.Document();
        parameters["positions"] = new JsonArray(place["position"]!.DeepClone());
        var range = (await session.AskAsync("textDocument/selectionRange", parameters))![0];
        var seen = new List<(int, int, int, int)>();
        for (; range is not null; range = range["parent"])
        {
            var (start, end) = (range["range"]!["start"]!, range["range"]!["end"]!);
            seen.Add(((int)start["line"]!, (int)start["character"]!, (int)end["line"]!, (int)end["character"]!));
        }

        seen.Should().OnlyHaveUniqueItems();
        seen.Count.Should().BeGreaterThan(4);
        foreach (var (inner, outer) in seen.Zip(seen.Skip(1)))
        {
            (outer.Item1, outer.Item2).CompareTo((inner.Item1, inner.Item2)).Should().BeLessThanOrEqualTo(0);
            (outer.Item3, outer.Item4).CompareTo((inner.Item3, inner.Item4)).Should().BeGreaterThanOrEqualTo(0);
        }
    }
}
