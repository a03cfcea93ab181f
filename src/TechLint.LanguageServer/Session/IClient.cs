using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>What the server says to the client of its own accord.</summary>
internal interface IClient
{
    Task PublishAsync(string uri, long? version, Diagnostic[] diagnostics);

    Task LogAsync(ServerLogLevel level, string message);

    Task RegisterAsync(Registration registration);

    /// <summary>The client's settings; null where it does not answer or what it answers cannot be read.</summary>
    Task<ClientSettings?> AskSettingsAsync();

    /// <summary>Asks the client to ask again for something, such as <c>workspace/diagnostic/refresh</c>.</summary>
    Task RefreshAsync(string method);
}
