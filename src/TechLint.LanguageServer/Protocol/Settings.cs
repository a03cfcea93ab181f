namespace TechLint.LanguageServer.Protocol;

/// <summary>Of the section <c>techlint</c>; what is left out is on.</summary>
internal sealed record ClientSettings(bool? InlayHints, bool? CodeLenses);

internal sealed record ConfigurationItem(string Section);

internal sealed record DidChangeConfigurationParams(ClientSettingsHolder? Settings);

internal sealed record ClientSettingsHolder(ClientSettings? Techlint);
