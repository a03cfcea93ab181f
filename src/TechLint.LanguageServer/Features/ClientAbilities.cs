using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Features;

/// <summary>What the client can do, as far as an answer depends on it.</summary>
/// <param name="PullsDiagnostics">It asks for diagnostics, and lets itself be told when to ask again; else they are pushed.</param>
internal sealed record ClientAbilities(
    bool Snippets, bool InsertAsIs, bool WatchesFiles, bool AnswersConfiguration, bool PullsDiagnostics, bool RefreshesHints, bool RefreshesLenses,
    bool AsksBeforeSaving = false, bool SharesEditRange = false)
{
    /// <summary>It shows the progress of what the server does of its own accord.</summary>
    public bool ShowsWork { get; init; }

    /// <summary>It tells of changed settings only where it is asked to.</summary>
    public bool RegistersConfiguration { get; init; }

    public static readonly ClientAbilities None = new(false, false, false, false, false, false, false);

    public static ClientAbilities Of(ClientCapabilities? client) => new(
        client?.TextDocument?.Completion?.CompletionItem?.SnippetSupport is true,
        client?.TextDocument?.Completion?.CompletionItem?.InsertTextModeSupport?.ValueSet?.Contains(1) is true,
        client?.Workspace?.DidChangeWatchedFiles?.DynamicRegistration is true,
        client?.Workspace?.Configuration is true,
        client?.TextDocument?.Diagnostic is not null && client.Workspace?.Diagnostics?.RefreshSupport is true,
        client?.Workspace?.InlayHint?.RefreshSupport is true,
        client?.Workspace?.CodeLens?.RefreshSupport is true,
        client?.TextDocument?.Synchronization?.WillSaveWaitUntil is true,
        client?.TextDocument?.Completion?.CompletionList?.ItemDefaults?.Contains("editRange") is true)
    {
        ShowsWork = client?.Window?.WorkDoneProgress is true,
        RegistersConfiguration = client?.Workspace?.DidChangeConfiguration?.DynamicRegistration is true,
    };
}
