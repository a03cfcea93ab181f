using System.Globalization;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

/// <summary>
/// The progress of one piece of work, told to the client in order: a beginning, reports, an end. Nothing waits for the client:
/// what cannot be told yet is left out, and the end is told whenever the beginning was.
/// </summary>
internal sealed class WorkProgress(IClient client, ProgressToken token, int total)
{
    private readonly Lock gate = new();
    private Task told = Task.CompletedTask;
    private bool hasBegun;
    private bool hasEnded;
    private int shown;

    /// <summary>Says that the work begins, unless it is over already.</summary>
    public void Begin(string title)
    {
        lock (gate)
        {
            if (hasBegun || hasEnded) return;
            hasBegun = true;
            Tell(new WorkDoneProgress("begin", title, true, Message(0), 0));
        }
    }

    /// <summary>How many pieces are done; told when it makes a whole percent.</summary>
    public void Report(int done)
    {
        lock (gate)
        {
            var percentage = total == 0 ? 100 : (int)Math.Clamp(100L * done / total, 0, 100);
            if (!hasBegun || hasEnded || percentage <= shown) return;
            shown = percentage;
            Tell(new WorkDoneProgress("report", null, null, Message(done), percentage));
        }
    }

    /// <summary>Completes when everything is on its way to the client.</summary>
    public Task EndAsync(string message)
    {
        lock (gate)
        {
            if (hasBegun && !hasEnded) Tell(new WorkDoneProgress("end", null, null, message, null));
            hasEnded = true;
            return told;
        }
    }

    private string Message(int done) => string.Create(CultureInfo.InvariantCulture, $"{done} of {total} files");

    private void Tell(WorkDoneProgress value) => told = AfterAsync(told, value);

    private async Task AfterAsync(Task before, WorkDoneProgress value)
    {
        await before.ConfigureAwait(false);
        await client.ProgressAsync(token, value).ConfigureAwait(false);
    }
}
