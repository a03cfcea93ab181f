using System.Diagnostics;
using System.Globalization;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Tools.Editing;

/// <summary>One sample at each of its prefixes and after thousands of random edits, everything asked each time. Minutes.</summary>
internal static class TortureCommand
{
    private const string Sample = "techniques/gm-ut-014.technique.yaml";
    private const int RandomEdits = 6000;
    private const int AskEvery = 5;

    public static async Task<int> RunAsync(string? executable, int step)
    {
        var clock = Stopwatch.StartNew();
        await using var session = await EditorSession.StartAsync(executable);
        var file = Path.Combine(EditorSession.Samples, Sample);
        var text = await File.ReadAllTextAsync(file);
        var uri = EditorSession.UriOf(file);
        await session.Client.OpenAsync(uri, text);
        var rounds = new EditingRounds(session.Client, session.Announced, uri);
        await rounds.PrefixesAsync(text, 0, step);
        Say($"prefixes of {Sample}: {text.Length / step + 1}", rounds, clock);
        for (var seed = 1; seed <= 4; seed++)
        {
            var typed = await rounds.RandomAsync(text, RandomEdits / 4, AskEvery, new Random(seed));
            await rounds.ShouldEqualWholeAsync(typed);
        }

        Say($"random edits: {RandomEdits}", rounds, clock);
        return 0;
    }

    private static void Say(string what, EditingRounds rounds, Stopwatch clock) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{what}; so far {rounds.Edits} edits, {rounds.Requests} requests answered in range, {clock.Elapsed.TotalSeconds:f0} s"));
}
