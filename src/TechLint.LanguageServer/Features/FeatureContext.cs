using TechLint.Engine;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Session;
using TechLint.Syntax;
using Range = TechLint.LanguageServer.Protocol.Range;

namespace TechLint.LanguageServer.Features;

/// <summary>What a request about a document works with: the document, its workspace as it stood when the request came, and the way back
/// from files and spans to addresses and ranges.</summary>
internal sealed class FeatureContext(
    DocumentView view, Snapshot snapshot, PositionEncoding encoding, ClientAbilities abilities, ClientSettings settings, Func<string, OpenDocument?> openDocument,
    CancellationToken cancellation)
{
    public OpenDocument Document => view.Document;

    public Workspaces.IWorkspace Workspace => view.Workspace;

    public Snapshot Snapshot => snapshot;

    public string Path => view.Document.Home.Path;

    public SyntaxTree? Tree => snapshot.TreeOf(Path);

    public ClientAbilities Abilities => abilities;

    public ClientSettings Settings => settings;

    public CancellationToken Cancellation => cancellation;

    public PositionMap Map { get; } = new(view.Document.Source, encoding, markCounts: true);

    public PositionEncoding Encoding => encoding;

    public Func<string, OpenDocument?> OpenDocument => openDocument;

    public int Offset(Position? position) => position is null ? 0 : Map.ToOffset(position);

    public TextSpan Span(Range? range)
    {
        if (range is not { Start: { } start, End: { } end }) return new TextSpan(0, Document.Source.Text.Length);
        var (from, to) = (Map.ToOffset(start), Map.ToOffset(end));
        return TextSpan.FromBounds(Math.Min(from, to), Math.Max(from, to));
    }

    /// <summary>Null for a file that has no address: a neighbour of a document that is no file.</summary>
    public string? AddressOf(string file) => openDocument(file)?.Uri.Spelling
        ?? (Document.Home.Root is { } root ? DocumentUri.FromPath(System.IO.Path.Combine(root, file))?.Normal : null);

    public Range? RangeIn(string file, TextSpan span)
    {
        var open = openDocument(file);
        var source = open?.Source ?? snapshot.TreeOf(file)?.Source;
        return source is null ? null : new PositionMap(source, encoding, markCounts: open is not null).ToRange(span);
    }

    public Location? LocationOf(string file, TextSpan span) =>
        AddressOf(file) is { } address && RangeIn(file, span) is { } range ? new Location(address, range) : null;

    /// <summary>Null where one of the files has no address.</summary>
    public WorkspaceEdit? EditOf(IEnumerable<Rules.Findings.TextEdit> edits)
    {
        var changes = new Dictionary<string, TextEdit[]>(StringComparer.Ordinal);
        foreach (var file in edits.GroupBy(edit => edit.File, StringComparer.Ordinal))
        {
            if (AddressOf(file.Key) is not { } address) return null;
            changes[address] = [.. file.OrderBy(edit => edit.Span).Select(edit => new TextEdit(RangeIn(file.Key, edit.Span)!, edit.NewText))];
        }

        return new WorkspaceEdit(changes);
    }
}
