namespace TechLint.LanguageServer.Protocol;

internal sealed record InlayHint(Position Position, string Label, bool PaddingLeft, string Tooltip);

/// <param name="Command">Null until it is resolved: its title is computed.</param>
internal sealed record CodeLens(Range? Range, Command? Command, LensData? Data);

/// <summary>What a lens stands for, so that its text can be worked out when it comes into sight.</summary>
internal sealed record LensData(string? Uri, string? Setup);

internal sealed record Command(string Title, [property: System.Text.Json.Serialization.JsonPropertyName("command")] string Name, string[] Arguments);

internal sealed record ExecuteCommandOptions(string[] Commands);

internal sealed record ExecuteCommandParams(string? Command, string[]? Arguments);

internal sealed record CodeLensOptions(bool ResolveProvider);
