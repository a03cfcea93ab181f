using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>The findings of all files, for a client that asks for them: in one answer, or piece by piece as they are found.</summary>
internal sealed class WorkspaceReport(IClient client, ProgressDesk desk, PositionEncoding encoding)
{
    /// <summary>How many files a piece holds: few enough to be seen growing, enough not to be a message a file.</summary>
    private const int Piece = 16;

    public async Task<WorkspaceDiagnosticReport> MakeAsync(
        IReadOnlyList<WorkspaceView> views, WorkspaceDiagnosticParams? parameters, CancellationToken cancellation)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var token = stop.Token;
        var before = (parameters?.PreviousResultIds ?? [])
            .Select(known => (Uri: DocumentUri.Parse(known?.Uri), known?.Value)).Where(known => known.Uri is not null)
            .GroupBy(known => known.Uri!.Normal, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Last().Value, StringComparer.Ordinal);
        var files = await Task.Run(() => WorkspaceFiles.Of(views).ToList(), token).ConfigureAwait(false);
        var progress = desk.OfRequest(parameters?.WorkDoneToken, "Checking the workspace", files.Count, stop);
        var isDone = false;
        try
        {
            var whole = new List<WorkspaceDocumentDiagnosticReport>();
            var piece = new List<WorkspaceDocumentDiagnosticReport>();
            for (var at = 0; at < files.Count; at++)
            {
                token.ThrowIfCancellationRequested();
                var file = files[at];
                var report = await Task.Run(() => Report(file, before, token), token).ConfigureAwait(false);
                progress.Report(at + 1);
                (parameters?.PartialResultToken is null ? whole : piece).Add(report);
                if (piece.Count == Piece || (at == files.Count - 1 && piece.Count > 0))
                {
                    await client.ProgressAsync(parameters!.PartialResultToken!, new WorkspaceDiagnosticReport([.. piece])).ConfigureAwait(false);
                    piece.Clear();
                }
            }

            isDone = true;
            return new WorkspaceDiagnosticReport([.. whole]);
        }
        finally
        {
            await progress.EndAsync(isDone ? "done" : "ended early").ConfigureAwait(false);
        }
    }

    /// <summary>A file's findings as the client shows them; a file that cannot be read has its finding at its first character.</summary>
    public static Diagnostic[] Diagnostics(WorkspaceFile file, PositionEncoding encoding, CancellationToken cancellation)
    {
        var document = file.Document ?? OpenDocument.First(file.Uri, null, "", file.View.Home with { Path = file.Path });
        var found = file.View.Workspace.Check(file.Path, cancellation);
        return DiagnosticRendering.Render(found, document, encoding, path => file.View.Open.GetValueOrDefault(path), isOpen: file.Open is not null);
    }

    private WorkspaceDocumentDiagnosticReport Report(WorkspaceFile file, Dictionary<string, string?> before, CancellationToken cancellation)
    {
        var shown = Diagnostics(file, encoding, cancellation);
        var id = PulledDiagnostics.IdOf(shown);
        var isSame = before.GetValueOrDefault(file.Uri.Normal) == id;
        return new WorkspaceDocumentDiagnosticReport(isSame ? "unchanged" : "full", id, isSame ? null : shown, file.Uri.Spelling, file.Open?.Version);
    }
}
