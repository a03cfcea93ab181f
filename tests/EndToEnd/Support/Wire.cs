using System.Diagnostics;
using TechLint.Tests.Shared;

namespace TechLint.Tests.EndToEnd.Support;

/// <summary><c>techlint lsp</c> as a process, with a raw client at its pipes.</summary>
internal sealed class Wire : IAsyncDisposable
{
    private readonly Process process;
    private readonly Task<string> error;

    private Wire(Process process)
    {
        this.process = process;
        error = process.StandardError.ReadToEndAsync();
        Client = new RawLspClient(process.StandardInput.BaseStream, process.StandardOutput.BaseStream);
    }

    public RawLspClient Client { get; }

    public static Wire Open(string executable, string folder) =>
        new(Outcome.Start(Executables.PathOf(executable), folder, new Dictionary<string, string>(), "lsp"));

    public static string UriOf(string path) => new Uri(path).AbsoluteUri;

    /// <summary>Closes the server's input, as a client that dies does.</summary>
    public void HangUp() => process.StandardInput.Close();

    /// <summary>The exit status, once the process has ended by itself, and what it wrote to standard error.</summary>
    public async Task<(int Status, string Error)> ExitAsync()
    {
        using var patience = new CancellationTokenSource(RawLspClient.Patience);
        await process.WaitForExitAsync(patience.Token);
        return (process.ExitCode, await error);
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        await Client.DisposeAsync();
        process.Dispose();
    }
}
