namespace TechLint.LanguageServer.Protocol;

internal sealed record InlayHint(Position Position, string Label, bool PaddingLeft, string Tooltip);

/// <param name="Command">A title alone: nothing happens at a click.</param>
internal sealed record CodeLens(Range Range, Command Command);

internal sealed record Command(string Title, [property: System.Text.Json.Serialization.JsonPropertyName("command")] string Name);

internal sealed record CodeLensOptions(bool ResolveProvider);
