using System.Globalization;
using System.Text;

namespace TechLint.LanguageServer.Transport;

/// <summary>Puts whole messages on the stream, one after another in the order of the calls.</summary>
internal sealed class FrameWriter(Stream output) : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);

    public async ValueTask WriteAsync(ReadOnlyMemory<byte> payload, CancellationToken cancellation)
    {
        var header = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {payload.Length}\r\n\r\n"));
        await turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            // Half a message would leave the client out of step for good: once begun, it is finished.
            await output.WriteAsync(header, CancellationToken.None).ConfigureAwait(false);
            await output.WriteAsync(payload, CancellationToken.None).ConfigureAwait(false);
            await output.FlushAsync(CancellationToken.None).ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }

    public void Dispose() => turn.Dispose();
}
