using System.Text.Json.Nodes;

namespace TechLint.Tests.Shared;

/// <summary>Every request about a document that a server announces, and what any answer must keep to.</summary>
internal static class FeatureRequests
{
    private static readonly (string Capability, string Method, string? Member)[] All =
    [
        ("hoverProvider", "textDocument/hover", null),
        ("completionProvider", "textDocument/completion", null),
        ("signatureHelpProvider", "textDocument/signatureHelp", null),
        ("definitionProvider", "textDocument/definition", null),
        ("referencesProvider", "textDocument/references", null),
        ("documentHighlightProvider", "textDocument/documentHighlight", null),
        ("renameProvider", "textDocument/prepareRename", null),
        ("documentSymbolProvider", "textDocument/documentSymbol", null),
        ("foldingRangeProvider", "textDocument/foldingRange", null),
        ("selectionRangeProvider", "textDocument/selectionRange", null),
        ("semanticTokensProvider", "textDocument/semanticTokens/full", null),
        ("semanticTokensProvider", "textDocument/semanticTokens/range", "range"),
        ("documentLinkProvider", "textDocument/documentLink", null),
        ("codeLensProvider", "textDocument/codeLens", null),
        ("inlayHintProvider", "textDocument/inlayHint", null),
        ("codeActionProvider", "textDocument/codeAction", null),
        ("documentFormattingProvider", "textDocument/formatting", null),
        ("documentRangeFormattingProvider", "textDocument/rangeFormatting", null),
        ("diagnosticProvider", "textDocument/diagnostic", null),
    ];

    public static IReadOnlyList<string> Methods(JsonNode capabilities) =>
        [.. All.Where(one => IsOn(capabilities[one.Capability]) && (one.Member is null || IsOn(capabilities[one.Capability]![one.Member]))).Select(one => one.Method)];

    /// <summary>What each of them needs, all in one: a server takes what it reads.</summary>
    public static JsonObject Parameters(string uri, JsonObject position, JsonObject? end = null) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri },
        ["position"] = position.DeepClone(),
        ["positions"] = new JsonArray(position.DeepClone()),
        ["range"] = new JsonObject { ["start"] = position.DeepClone(), ["end"] = (end ?? position).DeepClone() },
        ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(), ["includeDeclaration"] = true },
        ["options"] = new JsonObject { ["tabSize"] = 2, ["insertSpaces"] = true },
    };

    /// <summary>A request that the text gives no ground for, said in a sentence that the editor shows (LSP 3.17, RequestFailed): where a name cannot be renamed.</summary>
    private const int RequestFailed = -32803;

    /// <summary>The results by method, all sent at once and awaited together. An error answer is an exception, but for a renaming that is refused.</summary>
    public static async Task<IReadOnlyList<(string Method, JsonNode? Result)>> AskAllAsync(
        RawLspClient client, JsonNode capabilities, string uri, JsonObject position, JsonObject? end = null)
    {
        var asked = new List<(string Method, int Id)>();
        foreach (var method in Methods(capabilities)) asked.Add((method, await client.BeginAsync(method, Parameters(uri, position, end))));
        var results = new List<(string, JsonNode?)>();
        foreach (var (method, id) in asked)
        {
            var answer = await client.ResponseAsync(id);
            var error = answer["error"];
            if (error is not null && !(method == "textDocument/prepareRename" && (int)error["code"]! == RequestFailed)) throw new InvalidOperationException($"{method}: {error.ToJsonString()}");
            results.Add((method, answer["result"]));
        }

        return results;
    }

    /// <summary>The first position of a result that lies outside the text, in words; null where there is none.</summary>
    public static string? Fault(string method, JsonNode? result, string uri, ClientText text)
    {
        if (method.StartsWith("textDocument/semanticTokens", StringComparison.Ordinal)) return FaultOfTokens(result, text);
        if (method == "textDocument/foldingRange")
        {
            return (result as JsonArray ?? []).Select(fold => (First: (int)fold!["startLine"]!, Last: (int)fold["endLine"]!))
                .Where(fold => fold.First < 0 || fold.Last < fold.First || fold.Last >= text.LineCount)
                .Select(fold => $"{method}: lines {fold.First} to {fold.Last} of {text.LineCount}").FirstOrDefault();
        }

        return FaultIn(result, uri, text) is { } fault ? method + ": " + fault : null;
    }

    /// <summary>A result with every position replaced by its offset in UTF-16 units, so that two encodings can be compared.</summary>
    public static JsonNode? WithOffsets(string method, JsonNode? result, Func<string, ClientText> textOf, string uri)
    {
        if (method.StartsWith("textDocument/semanticTokens", StringComparison.Ordinal))
        {
            return new JsonArray([.. Tokens(result).Select(token => (JsonNode)new JsonArray(
                textOf(uri).OffsetOf(token.Line, token.Start), textOf(uri).OffsetOf(token.Line, token.Start + token.Length), token.Type))]);
        }

        // Names what its content was hashed to, positions included.
        if (result is JsonObject report && report.ContainsKey("resultId")) report["resultId"] = "";
        return Replaced(result, uri);

        JsonNode? Replaced(JsonNode? node, string address)
        {
            switch (node)
            {
                case JsonArray list:
                    return new JsonArray([.. list.Select(item => Replaced(item, address))]);
                case JsonObject map when map["line"] is { } line && map["character"] is { } character:
                    return textOf(address).OffsetOf((int)line, (int)character);
                case JsonObject map:
                    var here = (string?)(map["uri"] as JsonValue) ?? address;
                    return new JsonObject(map.Select(pair => KeyValuePair.Create(
                        pair.Key, Replaced(pair.Value, pair.Key.StartsWith("file:", StringComparison.Ordinal) ? pair.Key : here))));
                default:
                    return node?.DeepClone();
            }
        }
    }

    private static bool IsOn(JsonNode? capability) => capability is not null && !(capability is JsonValue value && value.TryGetValue<bool>(out var on) && !on);

    private static string? FaultIn(JsonNode? node, string uri, ClientText text)
    {
        switch (node)
        {
            case JsonArray list:
                return list.Select(item => FaultIn(item, uri, text)).FirstOrDefault(fault => fault is not null);
            case JsonObject map when map["line"] is { } line && map["character"] is { } character:
                return (int)line < 0 || (int)line >= text.LineCount || (int)character < 0 || (int)character > text.LengthOf((int)line)
                    ? $"{line}:{character} lies outside the text" : null;
            case JsonObject map when map["uri"] is JsonValue address && (string?)address != uri:
                return null;
            case JsonObject map:
                return map.Where(pair => !pair.Key.StartsWith("file:", StringComparison.Ordinal) || pair.Key == uri)
                    .Select(pair => FaultIn(pair.Value, uri, text)).FirstOrDefault(fault => fault is not null);
            default:
                return null;
        }
    }

    private static string? FaultOfTokens(JsonNode? result, ClientText text) => Tokens(result)
        .Where(token => token.Line < 0 || token.Line >= text.LineCount || token.Start < 0 || token.Length <= 0 || token.Start + token.Length > text.LengthOf(token.Line))
        .Select(token => $"a token at {token.Line}:{token.Start} of length {token.Length} lies outside the text").FirstOrDefault();

    private static IEnumerable<(int Line, int Start, int Length, int Type)> Tokens(JsonNode? result)
    {
        var data = (result?["data"] as JsonArray ?? []).Select(number => (int)number!).ToArray();
        var (line, start) = (0, 0);
        for (var at = 0; at + 4 < data.Length; at += 5)
        {
            line += data[at];
            start = data[at] == 0 ? start + data[at + 1] : data[at + 1];
            yield return (line, start, data[at + 2], data[at + 3]);
        }
    }
}
