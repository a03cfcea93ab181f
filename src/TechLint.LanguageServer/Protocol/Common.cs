namespace TechLint.LanguageServer.Protocol;

// The types of LSP 3.17 that this server reads or writes, and of each only the members that it uses. What comes from a client
// is nullable throughout and its numbers are wide: a client's mistake is ours to answer, not to stumble over.

/// <summary>Zero-based; the unit of <paramref name="Character"/> is the negotiated one.</summary>
internal sealed record Position(long Line, long Character);

/// <summary>The end is exclusive.</summary>
internal sealed record Range(Position Start, Position End);

internal sealed record Location(string Uri, Range Range);

internal sealed record TextDocumentIdentifier(string? Uri);

internal sealed record VersionedTextDocumentIdentifier(string? Uri, long? Version);

internal sealed record TextDocumentItem(string? Uri, long? Version, string? Text);

internal sealed record WorkspaceFolder(string? Uri, string? Name);
