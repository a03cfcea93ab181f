namespace TechLint.LanguageServer.Protocol;

/// <param name="Reason">1 by hand, 2 after a delay, 3 the editor lost the focus.</param>
internal sealed record WillSaveParams(TextDocumentIdentifier? TextDocument, int? Reason);
