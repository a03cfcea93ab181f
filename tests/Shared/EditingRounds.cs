using System.Text.Json.Nodes;

namespace TechLint.Tests.Shared;

/// <summary>
/// Rounds of writing against a running server: a text that grows character by character, and one that is edited at random. Every answer must
/// be no error and lie within the text; an exception tells which did not.
/// </summary>
internal sealed class EditingRounds(RawLspClient client, JsonNode capabilities, string uri)
{
    private static readonly string[] Words =
        ["{", "}", "[", "]", ": ", "- ", ", ", "\"", "'", "\n", "\r\n", "  ", "#", "5 mm", "10", "id: x", "&a ", "*a ", "|", ">", "?", "\t", "é", "😀", "語", "probe: ", "", "", ""];

    private int version = 1;

    public long Requests { get; private set; }

    public long Edits { get; private set; }

    /// <summary>The document at every <paramref name="step"/>th prefix, from <paramref name="from"/> on, grown by one edit each; everything is asked at its end.</summary>
    public async Task PrefixesAsync(string text, int from, int step)
    {
        var known = Whole(text, from);
        await WholeAsync(text[..known]);
        while (true)
        {
            await AskAllAsync(text[..known], known);
            if (known == text.Length) return;
            var next = Math.Max(Whole(text, Math.Min(text.Length, known + step)), known + 1);
            if (next < text.Length && Whole(text, next) != next) next++;
            var end = new ClientText(text[..known]).PositionOf(known);
            await ChangeAsync(end, end.DeepClone().AsObject(), text[known..next]);
            known = next;
        }
    }

    /// <summary>Random edits, everything asked after each <paramref name="askEvery"/>; answers the text that was typed.</summary>
    public async Task<string> RandomAsync(string text, int edits, int askEvery, Random random)
    {
        await WholeAsync(text);
        for (var count = 1; count <= edits; count++)
        {
            var start = Whole(text, random.Next(text.Length + 1));
            var end = Whole(text, Math.Min(text.Length, start + random.Next(5)));
            var word = Words[random.Next(Words.Length)];
            var seen = new ClientText(text);
            await ChangeAsync(seen.PositionOf(start), seen.PositionOf(end), word);
            text = text[..start] + word + text[end..];
            if (count % askEvery == 0) await AskAllAsync(text, Whole(text, random.Next(text.Length + 1)));
        }

        return text;
    }

    /// <summary>What was edited in place answers like the same text sent whole.</summary>
    public async Task ShouldEqualWholeAsync(string text)
    {
        var position = RawLspClient.Position(0, 0);
        var edited = await FeatureRequests.AskAllAsync(client, capabilities, uri, position);
        await WholeAsync(text);
        var whole = await FeatureRequests.AskAllAsync(client, capabilities, uri, position);
        Requests += edited.Count + whole.Count;
        foreach (var (one, other) in edited.Zip(whole))
        {
            if (one.Result?.ToJsonString() != other.Result?.ToJsonString()) throw new InvalidOperationException($"{one.Method} differs between edits and the whole text");
        }
    }

    public async Task WholeAsync(string text)
    {
        Edits++;
        await client.ChangeAsync(uri, ++version, RawLspClient.WholeText(text));
    }

    private async Task ChangeAsync(JsonObject start, JsonObject end, string text)
    {
        Edits++;
        await client.ChangeAsync(uri, ++version, new JsonObject { ["range"] = new JsonObject { ["start"] = start, ["end"] = end }, ["text"] = text });
    }

    private async Task AskAllAsync(string text, int offset)
    {
        var known = new ClientText(text);
        var answers = await FeatureRequests.AskAllAsync(client, capabilities, uri, known.PositionOf(offset));
        Requests += answers.Count;
        foreach (var (method, result) in answers)
        {
            if (FeatureRequests.Fault(method, result, uri, known) is { } fault) throw new InvalidOperationException($"at {offset} of {text.Length}: {fault}");
        }

        client.Forget();
    }

    /// <summary>A place between characters, and not inside a line's end.</summary>
    private static int Whole(string text, int at) =>
        at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || (text[at - 1] == '\r' && text[at] == '\n')) ? at - 1 : at;
}
