namespace TechLint.LanguageServer.Protocol;

internal sealed record HoverResult(MarkupContent Contents, Range Range);

/// <param name="Kind"><c>markdown</c> or <c>plaintext</c>.</param>
internal sealed record MarkupContent(string Kind, string Value);
