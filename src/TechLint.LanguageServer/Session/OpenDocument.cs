using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Workspaces;
using TechLint.Syntax;

namespace TechLint.LanguageServer.Session;

/// <summary>An open document at one of its versions.</summary>
/// <param name="Outdated">Cancelled when a newer version takes its place or the document is closed.</param>
internal sealed record OpenDocument(DocumentUri Uri, long? Version, SourceText Source, WorkspaceHome Home, CancellationTokenSource Outdated)
{
    /// <summary>This document at a newer version or in another home; readers of the old one are told.</summary>
    public OpenDocument Next(DocumentUri uri, long? version, string text, WorkspaceHome home)
    {
        Outdated.Cancel();
        return new OpenDocument(uri, version, new SourceText(home.Path, text), home, new CancellationTokenSource());
    }

    public static OpenDocument First(DocumentUri uri, long? version, string text, WorkspaceHome home) =>
        new(uri, version, new SourceText(home.Path, text), home, new CancellationTokenSource());
}

/// <summary>A document and its workspace at one moment.</summary>
internal sealed record DocumentView(OpenDocument Document, IWorkspace Workspace);
