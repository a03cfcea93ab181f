using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>What the server says to the client of its own accord.</summary>
internal interface IClient
{
    Task PublishAsync(string uri, long? version, Diagnostic[] diagnostics);

    Task LogAsync(ServerLogLevel level, string message);

    /// <summary>A message that the client shows to its user.</summary>
    Task ShowAsync(string message);

    Task RegisterAsync(Registration registration);

    /// <summary>The client's settings; null where it does not answer or what it answers cannot be read.</summary>
    Task<ClientSettings?> AskSettingsAsync();

    /// <summary>A step of work or a piece of an answer, under a token that the client knows.</summary>
    Task ProgressAsync<T>(ProgressToken token, T value) where T : class;

    /// <summary>Asks the client to know a token; false where it does not agree. Never completes where it never answers.</summary>
    Task<bool> CreateProgressAsync(ProgressToken token);

    /// <summary>Asks the client to ask again for something, such as <c>workspace/diagnostic/refresh</c>.</summary>
    Task RefreshAsync(string method);
}
