namespace TechLint.LanguageServer.Protocol;

internal sealed record DidChangeWatchedFilesParams(FileEvent[]? Changes);

/// <param name="Type">1 created, 2 changed, 3 deleted.</param>
internal sealed record FileEvent(string? Uri, int? Type);

internal sealed record DidChangeWorkspaceFoldersParams(WorkspaceFoldersChange? Event);

internal sealed record WorkspaceFoldersChange(WorkspaceFolder[]? Added, WorkspaceFolder[]? Removed);

internal sealed record Registration(string Id, string Method, WatchedFilesRegistration RegisterOptions);

internal sealed record WatchedFilesRegistration(FileSystemWatcher[] Watchers);

internal sealed record FileSystemWatcher(string GlobPattern);
