namespace TechLint.LanguageServer.Protocol;

internal sealed record DidOpenParams(TextDocumentItem? TextDocument);

internal sealed record DidChangeParams(VersionedTextDocumentIdentifier? TextDocument, ContentChange[]? ContentChanges);

/// <param name="Range">Null where <paramref name="Text"/> is the whole document.</param>
internal sealed record ContentChange(Range? Range, string? Text);

internal sealed record DidSaveParams(TextDocumentIdentifier? TextDocument);

internal sealed record DidCloseParams(TextDocumentIdentifier? TextDocument);

internal sealed record TextDocumentPositionParams(TextDocumentIdentifier? TextDocument, Position? Position);
