using System.Buffers.Text;
using System.Text;

namespace TechLint.LanguageServer.Transport;

internal enum FrameKind { Message, TooLarge, BadHeader, End }

/// <summary>What the stream held next: a payload, or why there is none. <see cref="Length"/> is what the header announced.</summary>
internal readonly record struct Frame(FrameKind Kind, byte[] Payload, long Length);

/// <summary>
/// Cuts a stream into messages by their <c>Content-Length</c> header, the base protocol of the Language Server Protocol.
/// Header names are read in any case, as HTTP has them; other headers and bare line feeds are tolerated. A message over
/// the limit is skipped, a header that cannot be read is passed over up to the next blank line: the session goes on.
/// </summary>
internal sealed class FrameReader(Stream input, long sizeLimit)
{
    private const int HeaderLineLimit = 8 * 1024;

    private readonly byte[] buffer = new byte[64 * 1024];
    private int next;
    private int filled;

    public async ValueTask<Frame> ReadAsync(CancellationToken cancellation)
    {
        long? length = null;
        var headers = 0;
        while (true)
        {
            var line = await ReadLineAsync(cancellation).ConfigureAwait(false);
            if (line is null) return new Frame(FrameKind.End, [], 0);
            if (line.Length > 0)
            {
                headers++;
                length = ContentLength(line) ?? length;
                continue;
            }

            // Blank lines between messages are nobody's mistake worth an answer.
            if (headers == 0) continue;
            break;
        }

        if (length is not { } announced || announced < 0) return new Frame(FrameKind.BadHeader, [], 0);
        if (announced > sizeLimit)
        {
            return new Frame(FrameKind.TooLarge, [], announced);
        }

        var payload = new byte[announced];
        return await FillAsync(payload, cancellation).ConfigureAwait(false)
            ? new Frame(FrameKind.Message, payload, announced)
            : new Frame(FrameKind.End, [], 0);
    }

    /// <summary>Passes over the body of a message that was too large.</summary>
    public async ValueTask SkipAsync(long length, CancellationToken cancellation)
    {
        while (length > 0)
        {
            if (next == filled && !await MoreAsync(cancellation).ConfigureAwait(false)) return;
            var taken = (int)Math.Min(length, filled - next);
            next += taken;
            length -= taken;
        }
    }

    /// <summary>The value of a <c>Content-Length</c> line; -1 where it is no whole number; null for any other line.</summary>
    private static long? ContentLength(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0 || !line.AsSpan(0, colon).Trim().Equals("Content-Length", StringComparison.OrdinalIgnoreCase)) return null;
        var digits = Encoding.ASCII.GetBytes(line[(colon + 1)..].Trim());
        return Utf8Parser.TryParse(digits, out long value, out var consumed) && consumed == digits.Length ? value : -1;
    }

    /// <summary>One header line without its end; what exceeds the limit of a line is dropped. Null at the end of the stream.</summary>
    private async ValueTask<string?> ReadLineAsync(CancellationToken cancellation)
    {
        var line = new StringBuilder();
        while (true)
        {
            if (next == filled && !await MoreAsync(cancellation).ConfigureAwait(false)) return null;
            while (next < filled)
            {
                var read = (char)buffer[next++];
                if (read == '\n')
                {
                    if (line.Length > 0 && line[^1] == '\r') line.Length--;
                    return line.ToString();
                }

                if (line.Length < HeaderLineLimit) line.Append(read);
            }
        }
    }

    private async ValueTask<bool> FillAsync(byte[] target, CancellationToken cancellation)
    {
        var done = Math.Min(target.Length, filled - next);
        buffer.AsSpan(next, done).CopyTo(target);
        next += done;
        while (done < target.Length)
        {
            var read = await input.ReadAsync(target.AsMemory(done), cancellation).ConfigureAwait(false);
            if (read == 0) return false;
            done += read;
        }

        return true;
    }

    private async ValueTask<bool> MoreAsync(CancellationToken cancellation)
    {
        next = 0;
        filled = await input.ReadAsync(buffer, cancellation).ConfigureAwait(false);
        return filled > 0;
    }
}
