using System.Globalization;
using System.IO.Pipelines;
using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;
using Xunit;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>The real engine at work on three hundred techniques, while somebody writes. Order is asserted, never time.</summary>
public sealed class BusyWorkspaceTests
{
    private const int Techniques = 300;

    [Fact]
    public async Task Hover_and_completion_are_answered_before_a_check_of_three_hundred_techniques_is_over()
    {
        var folder = Directory.CreateTempSubdirectory("techlint-busy-").FullName;
        try
        {
            foreach (var file in Directory.EnumerateFiles(FeatureSession.Samples, "*.equipment.yaml", SearchOption.AllDirectories)) Copy(file, folder);
            File.WriteAllText(Path.Combine(folder, "techlint.yaml"), "");
            var text = await File.ReadAllTextAsync(Path.Combine(FeatureSession.Samples, "techniques", "gm-ut-014.technique.yaml"), TestContext.Current.CancellationToken);
            Directory.CreateDirectory(Path.Combine(folder, "techniques"));
            for (var number = 0; number < Techniques; number++)
            {
                // Each rests on numbers of its own, so that no study serves two.
                var own = text.Replace("index-offset: 34 mm", string.Create(CultureInfo.InvariantCulture, $"index-offset: {30 + (number / 100.0)} mm"), StringComparison.Ordinal);
                await File.WriteAllTextAsync(Path.Combine(folder, "techniques", $"t{number:d3}.technique.yaml"), own, TestContext.Current.CancellationToken);
            }

            await ServeAsync(folder, text);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task ServeAsync(string folder, string text)
    {
        using var stop = new CancellationTokenSource();
        var (toServer, fromServer) = (new Pipe(), new Pipe());
        await using var client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream());
        var running = Task.Run(async () =>
        {
            await using var output = fromServer.Writer.AsStream();
            return await LanguageServerHost.RunAsync(toServer.Reader.AsStream(), output, new LanguageServerOptions(() => ServerSession.Day), stop.Token);
        });
        var parameters = client.InitializeParams(new Uri(folder).AbsoluteUri);
        parameters["capabilities"] = JsonNode.Parse("""{"textDocument":{"diagnostic":{} },"workspace":{"diagnostics":{"refreshSupport":true} } }""");
        await client.RequestAsync("initialize", parameters);
        await client.NotifyAsync("initialized", new JsonObject());
        var uri = new Uri(Path.Combine(folder, "techniques", "mine.technique.yaml")).AbsoluteUri;
        await client.OpenAsync(uri, text);

        var check = await client.BeginAsync("workspace/diagnostic", JsonNode.Parse("""{"previousResultIds":[],"workDoneToken":"w"}"""));
        await client.NotificationAsync("$/progress", sent => (string?)sent["value"]!["kind"] == "begin");
        var asked = new List<int>();
        for (var version = 2; version <= 6; version++)
        {
            await client.ChangeAsync(uri, version, RawLspClient.Change(0, 0, 0, 0, "# more\n"));
            asked.Add(await client.BeginAsync("textDocument/hover", RawLspClient.At(uri, version + 2, 2)));
            await client.ResponseAsync(asked[^1]);
            asked.Add(await client.BeginAsync("textDocument/completion", RawLspClient.At(uri, version + 2, 2)));
            await client.ResponseAsync(asked[^1]);
        }

        client.Received.Should().NotContain(message => IsAnswerTo(message, check), "the check still runs");
        await client.NotifyAsync("$/cancelRequest", new JsonObject { ["id"] = check });
        (await client.ResponseAsync(check))["error"]!["code"]!.GetValue<int>().Should().Be(-32800);
        await stop.CancelAsync();
        await running.WaitAsync(RawLspClient.Patience, CancellationToken.None);
    }

    private static bool IsAnswerTo(JsonObject message, int id) => message["method"] is null && message["id"]?.ToJsonString() == id.ToString(CultureInfo.InvariantCulture);

    private static void Copy(string file, string folder)
    {
        var target = Path.Combine(folder, Path.GetRelativePath(FeatureSession.Samples, file));
        if (target.Contains("flawed", StringComparison.Ordinal)) return;
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Copy(file, target);
    }
}
