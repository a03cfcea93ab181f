namespace TechLint.LanguageServer.Protocol;

internal sealed record CodeActionParams(TextDocumentIdentifier? TextDocument, Range? Range, CodeActionContext? Context);

internal sealed record CodeActionContext(string[]? Only);

internal sealed record CodeActionOptions(string[] CodeActionKinds);

internal sealed record CodeAction(string Title, string Kind, Diagnostic[]? Diagnostics, bool? IsPreferred, WorkspaceEdit Edit);
