using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Workspaces;
using TechLint.Rules.Findings;

namespace TechLint.LanguageServer.Session;

/// <summary>A file's findings as the protocol shows them.</summary>
internal static class DiagnosticRendering
{
    private const string Source = "techlint";
    private const int Unnecessary = 1;

    /// <param name="openDocument">The open document at a path of the workspace, or null: its address is then the client's spelling.</param>
    /// <param name="isOpen">Whether the client sent the text, and counts a byte order mark in it.</param>
    public static Diagnostic[] Render(
        FileFindings found, OpenDocument document, PositionEncoding encoding, Func<string, OpenDocument?> openDocument, bool isOpen = true)
    {
        var map = new PositionMap(document.Source, encoding, markCounts: isOpen);
        return [.. found.Findings.Select(finding => new Diagnostic(
            map.ToRange(finding.Span),
            SeverityOf(finding.Severity),
            finding.Rule,
            Source,
            Message(finding),
            finding.Rule is "unused-definition" ? [Unnecessary] : null,
            Related(finding),
            new DiagnosticData(finding.Rule, finding.At)))];

        DiagnosticRelatedInformation[]? Related(Finding finding)
        {
            var places = new List<DiagnosticRelatedInformation>();
            foreach (var place in finding.Related)
            {
                var open = openDocument(place.File);
                var source = open?.Source ?? found.Sources.GetValueOrDefault(place.File);
                var address = open?.Uri.Spelling ?? AddressOf(document.Home, place.File);
                if (source is null || address is null) continue;
                var range = new PositionMap(source, encoding, markCounts: open is not null).ToRange(place.Span);
                places.Add(new DiagnosticRelatedInformation(new Location(address, range), place.Message));
            }

            return places.Count == 0 ? null : [.. places];
        }
    }

    /// <summary>The lines of the text report without the place: message, detail, and the limit's source.</summary>
    private static string Message(Finding finding)
    {
        var lines = new List<string> { finding.Message };
        lines.AddRange(finding.Detail);
        if (finding.Requirement is { } limit) lines.Add($"{limit.Set}: {limit.Source} ({limit.BasisText})");
        return string.Join('\n', lines);
    }

    private static int SeverityOf(Severity severity) => severity switch
    {
        Severity.Error => 1,
        Severity.Warning => 2,
        _ => 3,
    };

    private static string? AddressOf(WorkspaceHome home, string path) =>
        home.Root is null ? null : DocumentUri.FromPath(Path.Combine(home.Root, path))?.Normal;
}
