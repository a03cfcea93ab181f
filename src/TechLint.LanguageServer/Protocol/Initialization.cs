namespace TechLint.LanguageServer.Protocol;

internal sealed record InitializeParams(
    string? RootUri, string? RootPath, WorkspaceFolder[]? WorkspaceFolders, ClientCapabilities? Capabilities);

internal sealed record ClientCapabilities(GeneralClientCapabilities? General, WorkspaceClientCapabilities? Workspace);

internal sealed record GeneralClientCapabilities(string[]? PositionEncodings);

internal sealed record WorkspaceClientCapabilities(DynamicRegistrationCapability? DidChangeWatchedFiles);

internal sealed record DynamicRegistrationCapability(bool? DynamicRegistration);

internal sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

internal sealed record ServerInfo(string Name, string Version);

internal sealed record ServerCapabilities(
    string PositionEncoding, TextDocumentSyncOptions TextDocumentSync, bool HoverProvider, WorkspaceServerCapabilities Workspace);

/// <param name="Change">2: incremental.</param>
internal sealed record TextDocumentSyncOptions(bool OpenClose, int Change, SaveOptions Save);

internal sealed record SaveOptions(bool IncludeText);

internal sealed record WorkspaceServerCapabilities(WorkspaceFoldersServerCapabilities WorkspaceFolders);

internal sealed record WorkspaceFoldersServerCapabilities(bool Supported, bool ChangeNotifications);

internal sealed record InitializedParams;
