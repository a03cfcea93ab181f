namespace TechLint.LanguageServer.Protocol;

internal sealed record DocumentDiagnosticParams(TextDocumentIdentifier? TextDocument, string? PreviousResultId);

/// <param name="Kind"><c>full</c>, or <c>unchanged</c> without items.</param>
internal sealed record DocumentDiagnosticReport(string Kind, string ResultId, Diagnostic[]? Items);

internal sealed record WorkspaceDiagnosticParams(PreviousResultId[]? PreviousResultIds, ProgressToken? WorkDoneToken, ProgressToken? PartialResultToken);

internal sealed record PreviousResultId(string? Uri, string? Value);

internal sealed record WorkspaceDiagnosticReport(WorkspaceDocumentDiagnosticReport[] Items);

/// <param name="Version">Always told: null for a file that is not open.</param>
internal sealed record WorkspaceDocumentDiagnosticReport(
    string Kind, string ResultId, Diagnostic[]? Items, string Uri,
    [property: System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.Never)] long? Version);

internal sealed record DiagnosticOptions(string Identifier, bool InterFileDependencies, bool WorkspaceDiagnostics, bool WorkDoneProgress);
