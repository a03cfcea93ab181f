namespace TechLint.LanguageServer.Protocol;

internal sealed record ReferenceParams(TextDocumentIdentifier? TextDocument, Position? Position, ReferenceContext? Context);

internal sealed record ReferenceContext(bool? IncludeDeclaration);

internal sealed record RenameParams(TextDocumentIdentifier? TextDocument, Position? Position, string? NewName);

internal sealed record PrepareRenameResult(Range Range, string Placeholder);

internal sealed record RenameOptions(bool PrepareProvider);

/// <param name="Kind">2 read, 3 write (where the name is given).</param>
internal sealed record DocumentHighlight(Range Range, int Kind);
