using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>What the server says to the client of its own accord.</summary>
internal interface IClient
{
    Task PublishAsync(string uri, long? version, Diagnostic[] diagnostics);

    Task LogAsync(ServerLogLevel level, string message);

    Task RegisterAsync(Registration registration);
}
