using System.Text.Json;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// What the client shows of each file, as it was sent. Everything pushed passes here one at a time, and whether it still holds is asked at
/// the last moment: so nothing stale follows something newer, whoever found it. Only differences are sent.
/// </summary>
internal sealed class DiagnosticsBoard(IClient client) : IDisposable
{
    private const string Nothing = "[]";

    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly Dictionary<string, Shown> shown = new(StringComparer.Ordinal);

    /// <summary>An open document's findings; the first time they are always sent, so that an editor knows of a sound document too.</summary>
    public Task ShowOpenAsync(OpenDocument document, Diagnostic[] diagnostics, Func<bool> isCurrent) => WithTurnAsync(async () =>
    {
        if (!isCurrent()) return;
        var text = TextOf(diagnostics);
        if (shown.TryGetValue(document.Uri.Normal, out var before) && before.IsOpen && string.Equals(before.Text, text, StringComparison.Ordinal)) return;
        shown[document.Uri.Normal] = new Shown(document.Uri, text, IsOpen: true);
        await client.PublishAsync(document.Uri.Spelling, document.Version, diagnostics).ConfigureAwait(false);
    });

    /// <summary>The findings of a file that nobody has open.</summary>
    public Task ShowClosedAsync(DocumentUri uri, Diagnostic[] diagnostics, Func<bool> isClosed) => WithTurnAsync(async () =>
    {
        if (!isClosed()) return;
        var text = TextOf(diagnostics);
        var before = shown.TryGetValue(uri.Normal, out var known) ? known.Text : Nothing;
        if (string.Equals(before, text, StringComparison.Ordinal)) return;
        if (diagnostics.Length == 0) shown.Remove(uri.Normal);
        else shown[uri.Normal] = new Shown(known?.Uri ?? uri, text, IsOpen: false);
        await client.PublishAsync((known?.Uri ?? uri).Spelling, null, diagnostics).ConfigureAwait(false);
    });

    /// <summary>A document was closed: nothing is shown of it until its file has been looked at.</summary>
    public Task ClearAsync(DocumentUri uri) => WithTurnAsync(async () =>
    {
        shown.Remove(uri.Normal);
        await client.PublishAsync(uri.Spelling, null, []).ConfigureAwait(false);
    });

    /// <summary>Takes back what is shown of files that are none of those given and that nobody has open.</summary>
    public Task KeepOnlyAsync(HashSet<string> normals, Func<string, bool> isClosed) => WithTurnAsync(async () =>
    {
        foreach (var gone in shown.Values.Where(one => !one.IsOpen && !normals.Contains(one.Uri.Normal) && isClosed(one.Uri.Normal)).ToList())
        {
            shown.Remove(gone.Uri.Normal);
            await client.PublishAsync(gone.Uri.Spelling, null, []).ConfigureAwait(false);
        }
    });

    public void Dispose() => turn.Dispose();

    private static string TextOf(Diagnostic[] diagnostics) =>
        diagnostics.Length == 0 ? Nothing : JsonSerializer.Serialize(diagnostics, ProtocolJson.Default.DiagnosticArray);

    private async Task WithTurnAsync(Func<Task> work)
    {
        await turn.WaitAsync().ConfigureAwait(false);
        try
        {
            await work().ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }

    private sealed record Shown(DocumentUri Uri, string Text, bool IsOpen);
}
