namespace TechLint.LanguageServer.Protocol;

internal sealed record TextDocumentParams(TextDocumentIdentifier? TextDocument);

internal sealed record TextDocumentRangeParams(TextDocumentIdentifier? TextDocument, Range? Range);

internal sealed record DocumentSymbol(string Name, string? Detail, int Kind, Range Range, Range SelectionRange, DocumentSymbol[]? Children);

internal sealed record WorkspaceSymbolParams(string? Query);

internal sealed record SymbolInformation(string Name, int Kind, Location Location, string? ContainerName);

internal sealed record FoldingRange(int StartLine, int EndLine, string? Kind);

internal sealed record SelectionRangeParams(TextDocumentIdentifier? TextDocument, Position[]? Positions);

internal sealed record SelectionRange(Range Range, SelectionRange? Parent);

internal sealed record SemanticTokens(int[] Data);

internal sealed record SemanticTokensLegend(string[] TokenTypes, string[] TokenModifiers);

internal sealed record SemanticTokensOptions(SemanticTokensLegend Legend, bool Range, bool Full);

internal sealed record DocumentLink(Range Range, string Target, string? Tooltip);

internal sealed record DocumentLinkOptions(bool ResolveProvider);

internal sealed record SignatureHelp(SignatureInformation[] Signatures, int ActiveSignature, int ActiveParameter);

internal sealed record SignatureInformation(string Label, MarkupContent? Documentation, ParameterInformation[] Parameters);

internal sealed record ParameterInformation(string Label, MarkupContent? Documentation);

internal sealed record SignatureHelpOptions(string[] TriggerCharacters);
