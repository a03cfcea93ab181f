using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Tools.Editing;

/// <summary>
/// An editor's day in minutes: edits of a technique and its library, requests that are awaited, cancelled or outrun by the next edit, documents closed
/// and reopened, whole workspaces checked. What the server holds afterwards must be what it held when its caches were full.
/// </summary>
internal static class SoakCommand
{
    /// <summary>How much more than after the warm-up may be held at the end. The bounded caches are full by then, and what they hold differs a
    /// little from one moment to the next; a text of 10 kB lost at each edit would be a multiple within a minute (our own choice).</summary>
    private const double MostGrowth = 1.3;

    /// <summary>More examinations than the engine keeps studies of.</summary>
    private const int WarmUp = 100;

    /// <summary>How often the memory is told on the way.</summary>
    private const int Tellings = 10;

    /// <summary>By then every kind of request has been asked often and every cache is full: what is held grows no more, or leaks.</summary>
    private const int WarmTelling = 3;

    public static async Task<int> RunAsync(double minutes, string? executable)
    {
        await using var session = await EditorSession.StartAsync(executable);
        var client = session.Client;
        var (technique, library) = (FileOf("techniques/gm-ut-014.technique.yaml"), FileOf("equipment/workshop.equipment.yaml"));
        var (text, libraryText) = (await File.ReadAllTextAsync(technique), await File.ReadAllTextAsync(library));
        var uri = EditorSession.UriOf(technique);
        var libraryUri = EditorSession.UriOf(library);
        var total = TimeSpan.FromMinutes(minutes);
        var clock = Stopwatch.StartNew();
        var random = new Random(20261125);
        var rounds = new EditingRounds(client, session.Announced, uri);
        await WarmUpAsync(client, rounds, uri, text);
        var (warm, count, told) = (session.Memory(), 0, 0);
        Say("warm", warm, rounds, count, clock);
        clock.Restart();
        while (clock.Elapsed < total)
        {
            count++;
            await client.OpenAsync(uri, text);
            await rounds.RandomAsync(text, 40, 10, random);
            await rounds.RandomAsync(Varied(text, random), 1, 1, random);
            await OutrunAsync(client, session.Announced, rounds, uri, text);
            await client.OpenAsync(libraryUri, libraryText);
            await client.ChangeAsync(libraryUri, 2, RawLspClient.WholeText(libraryText.Replace("elevation: 10 mm", $"elevation: 10.{random.Next(100)} mm", StringComparison.Ordinal)));
            if (count % 10 == 0) await CheckAllAsync(client, isCancelled: count % 20 == 0);
            await client.CloseAsync(libraryUri);
            await client.CloseAsync(uri);
            client.Forget();
            if (clock.Elapsed < total * (told + 1) / Tellings) continue;
            told = (int)(clock.Elapsed * Tellings / total);
            var held = session.Memory();
            Say("on the way", held, rounds, count, clock);
            if (told == WarmTelling) warm = Math.Max(warm, held);
        }

        await Task.Delay(1000);
        var end = session.Memory();
        Say("end", end, rounds, count, clock);
        if (end <= warm * MostGrowth) return 0;
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"The server holds {(double)end / warm:f2} times what it held when warm; at most {MostGrowth} is flat"));
        return 1;
    }

    /// <summary>Fills what the engine keeps: only then is more held than before a leak.</summary>
    private static async Task WarmUpAsync(RawLspClient client, EditingRounds rounds, string uri, string text)
    {
        await client.OpenAsync(uri, text);
        for (var count = 0; count < WarmUp; count++)
        {
            var offset = string.Create(CultureInfo.InvariantCulture, $"index-offset: {30 + (count / 100.0)} mm");
            await rounds.WholeAsync(text.Replace("index-offset: 34 mm", offset, StringComparison.Ordinal));
            await client.RequestAsync("textDocument/codeLens", FeatureRequests.Parameters(uri, RawLspClient.Position(0, 0)));
            client.Forget();
        }

        await client.CloseAsync(uri);
    }

    /// <summary>Another examination, so that the studies of the one before are of no use.</summary>
    private static string Varied(string text, Random random) =>
        text.Replace("index-offset: 34 mm", string.Create(CultureInfo.InvariantCulture, $"index-offset: {random.Next(2000, 4000) / 100.0} mm"), StringComparison.Ordinal);

    /// <summary>Requests whose text changes before they are answered, and others that are cancelled: each ends with one of the protocol's answers; a renaming may be refused.</summary>
    private static async Task OutrunAsync(RawLspClient client, JsonNode announced, EditingRounds rounds, string uri, string text)
    {
        var ids = new List<int>();
        foreach (var method in FeatureRequests.Methods(announced)) ids.Add(await client.BeginAsync(method, FeatureRequests.Parameters(uri, RawLspClient.Position(3, 4))));
        foreach (var id in ids.Where((_, at) => at % 2 == 0)) await client.NotifyAsync("$/cancelRequest", new JsonObject { ["id"] = id });
        await rounds.WholeAsync(text + "# more\n");
        foreach (var id in ids) await EndedAsync(client, id);
    }

    private static async Task CheckAllAsync(RawLspClient client, bool isCancelled)
    {
        var id = await client.BeginAsync("workspace/diagnostic", new JsonObject { ["previousResultIds"] = new JsonArray(), ["workDoneToken"] = "soak" });
        if (isCancelled) await client.NotifyAsync("window/workDoneProgress/cancel", new JsonObject { ["token"] = "soak" });
        await EndedAsync(client, id);
    }

    private static async Task EndedAsync(RawLspClient client, int id)
    {
        var answer = await client.ResponseAsync(id);
        if (answer["error"] is { } error && (int)error["code"]! is not (-32800 or -32801 or -32803)) throw new InvalidOperationException(answer.ToJsonString());
    }

    private static string FileOf(string path) => Path.Combine(EditorSession.Samples, path);

    private static void Say(string when, long bytes, EditingRounds rounds, int count, Stopwatch clock) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{when}: {bytes / 1e6:f1} MB after {clock.Elapsed.TotalSeconds:f0} s, {count} rounds, {rounds.Edits} edits, {rounds.Requests} requests awaited"));
}
