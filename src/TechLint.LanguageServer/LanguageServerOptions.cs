namespace TechLint.LanguageServer;

/// <summary>How much the server tells in the editor's log.</summary>
public enum ServerLogLevel { Off, Error, Info }

/// <param name="Today">Today in UTC, asked again whenever a document is opened or changed: a session may last for days.</param>
public sealed record LanguageServerOptions(Func<DateOnly> Today, ServerLogLevel LogLevel = ServerLogLevel.Error)
{
    /// <summary>The largest message taken, in bytes.</summary>
    public long MessageSizeLimit { get; init; } = 64L * 1024 * 1024;

    /// <summary>How long nothing must change before the open documents that depend on a changed one are checked again.</summary>
    public TimeSpan QuietTime { get; init; } = TimeSpan.FromMilliseconds(250);
}
