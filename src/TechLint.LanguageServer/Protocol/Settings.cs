namespace TechLint.LanguageServer.Protocol;

/// <summary>Of the section <c>techlint</c>; what is left out is on, formatting at a save off.</summary>
internal sealed record ClientSettings(bool? InlayHints, bool? CodeLenses, bool? FormatOnSave = null)
{
    /// <summary>Whether files that nobody has open are checked, and their findings pushed.</summary>
    public bool? WorkspaceDiagnostics { get; init; }
}

internal sealed record ConfigurationItem(string Section);

internal sealed record DidChangeConfigurationParams(ClientSettingsHolder? Settings);

internal sealed record ClientSettingsHolder(ClientSettings? Techlint);
