namespace TechLint.LanguageServer.Protocol;

/// <param name="Severity">1 error, 2 warning, 3 information.</param>
/// <param name="Tags">1: unnecessary.</param>
internal sealed record Diagnostic(
    Range Range, int Severity, string Code, string Source, string Message,
    int[]? Tags, DiagnosticRelatedInformation[]? RelatedInformation, DiagnosticData Data);


internal sealed record DiagnosticRelatedInformation(Location Location, string Message);

/// <summary>What a later request needs to find the finding again.</summary>
internal sealed record DiagnosticData(string Rule, string At);
