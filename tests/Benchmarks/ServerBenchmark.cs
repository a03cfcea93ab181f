using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text.Json.Nodes;
using TechLint.LanguageServer;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Benchmarks;

/// <summary>From an edit leaving the editor to its diagnostics arriving.</summary>
internal static class ServerBenchmark
{
    private const int Edits = 200;

    public static async Task RunAsync()
    {
        using var repository = GeneratedRepository.Make(1, offShare: 0);
        await InProcessAsync(repository);
        foreach (var (name, path) in Repository.Executables) await OverPipesAsync(repository, name, path);
    }

    private static async Task InProcessAsync(GeneratedRepository repository)
    {
        var toServer = new Pipe();
        var fromServer = new Pipe();
        using var stop = new CancellationTokenSource();
        var serving = Task.Run(async () =>
        {
            await using var output = fromServer.Writer.AsStream();
            return await LanguageServerHost.RunAsync(
                toServer.Reader.AsStream(), output, new LanguageServerOptions(() => new DateOnly(2026, 11, 24)), stop.Token);
        });
        await using var client = new RawLspClient(toServer.Writer.AsStream(), fromServer.Reader.AsStream());
        await SessionAsync(repository, "in process", client);
        await serving;
    }

    private static async Task OverPipesAsync(GeneratedRepository repository, string name, string path)
    {
        using var process = Child.Start(path, repository.Folder, "lsp");
        process.ErrorDataReceived += static (_, _) => { };
        process.BeginErrorReadLine();
        await using var client = new RawLspClient(process.StandardInput.BaseStream, process.StandardOutput.BaseStream);
        await SessionAsync(repository, name + " process", client);
        await process.WaitForExitAsync();
    }

    private static async Task SessionAsync(GeneratedRepository repository, string where, RawLspClient client)
    {
        var start = Stopwatch.GetTimestamp();
        await client.InitializeAsync(new Uri(repository.Folder).AbsoluteUri);
        var technique = new EditedTechnique(client, Path.Combine(repository.Folder, repository.Files[0]));
        await technique.OpenAsync();
        Figures.Tell($"{where}: start to first diagnostics", [Stopwatch.GetElapsedTime(start).TotalMilliseconds]);

        Figures.Tell($"{where}: an edit of a comment", await technique.EditAsync(Edits, _ => null));
        Figures.Tell($"{where}: an index offset that still covers", await technique.EditAsync(Edits, round => 20 + (round * 0.01)));
        Figures.Tell($"{where}: an index offset that covers no more", await technique.EditAsync(Edits, round => 92 + (round * 0.02)));
        await client.EndAsync();
    }

    /// <summary>
    /// A technique that always has a note to its name, under a comment that comes and goes: so the diagnostics move with every edit, and the server
    /// has something to publish.
    /// </summary>
    private sealed class EditedTechnique(RawLspClient client, string path)
    {
        private readonly string uri = new Uri(path).AbsoluteUri;
        private int version;
        private bool hasComment;
        private int line;
        private int character;

        public async Task OpenAsync()
        {
            const string key = "side: left, index-offset: ";
            var text = (await File.ReadAllTextAsync(path))
                .Replace("references:\n", "references:\n  - {id: spare, method: lateral-wave, level: 60 %}\n", StringComparison.Ordinal);
            var at = text.IndexOf(key, StringComparison.Ordinal) + key.Length;
            text = text[..at] + "20.00" + text[text.IndexOf(" mm", at, StringComparison.Ordinal)..];
            line = text.AsSpan(0, at).Count('\n');
            character = at - text.LastIndexOf('\n', at) - 1;
            await client.OpenAsync(uri, text, ++version);
            await client.DiagnosticsAsync(uri);
        }

        /// <param name="offset">The offset in mm to set in each round; null leaves it alone.</param>
        public async Task<double[]> EditAsync(int count, Func<int, double?> offset)
        {
            var times = new double[count];
            for (var round = 0; round < count; round++)
            {
                var changes = new List<JsonObject>
                {
                    hasComment ? RawLspClient.Change(0, 0, 1, 0, "") : RawLspClient.Change(0, 0, 0, 0, "# checked again\n"),
                };
                line += hasComment ? -1 : 1;
                hasComment = !hasComment;
                if (offset(round) is { } number)
                {
                    changes.Add(RawLspClient.Change(line, character, line, character + 5, number.ToString("00.00", CultureInfo.InvariantCulture)));
                }

                var now = ++version;
                var start = Stopwatch.GetTimestamp();
                await client.ChangeAsync(uri, now, [.. changes]);
                await client.DiagnosticsAsync(uri, sent => (int)sent["version"]! == now);
                times[round] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }

            return times;
        }
    }
}
