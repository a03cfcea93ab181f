namespace TechLint.LanguageServer.Protocol;

internal sealed record DidChangeWatchedFilesParams(FileEvent[]? Changes);

/// <param name="Type">1 created, 2 changed, 3 deleted.</param>
internal sealed record FileEvent(string? Uri, int? Type);

internal sealed record DidChangeWorkspaceFoldersParams(WorkspaceFoldersChange? Event);

internal sealed record WorkspaceFoldersChange(WorkspaceFolder[]? Added, WorkspaceFolder[]? Removed);

internal sealed record Registration(string Id, string Method, RegistrationOptions RegisterOptions);

/// <param name="Watchers">Of watched files.</param>
/// <param name="Section">Of the client's settings.</param>
internal sealed record RegistrationOptions(FileSystemWatcher[]? Watchers, string? Section);

internal sealed record FileSystemWatcher(string GlobPattern);
