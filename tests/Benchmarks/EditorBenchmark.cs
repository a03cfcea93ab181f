using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using TechLint.Tests.Shared;

namespace TechLint.Tests.Benchmarks;

/// <summary>
/// What an author feels: from a new process to the first diagnostics, from an edit to its diagnostics, from asking for completion to the list, on a
/// technique of 300 lines and one of 3,000. Beside it, in the same run and on the same file, a general-purpose YAML language server that validates
/// against the schema alone.
/// </summary>
internal static class EditorBenchmark
{
    private const int Starts = 15;
    private const int Edits = 200;
    private static readonly string Peer = Path.Combine(Repository.Root, "tests", "Benchmarks", "Peer");

    public static async Task RunAsync()
    {
        foreach (var lines in new[] { 300, 3000 })
        {
            using var technique = new LongTechnique(lines);
            Figures.Say($"  a technique of {technique.Lines} lines");
            foreach (var (name, path) in Repository.Executables) await MeasureAsync(name, path, ["lsp"], technique, isPeer: false);
            if (PeerIsThere()) await MeasureAsync("YAML server", "node", [Path.Combine(Peer, "node_modules", "yaml-language-server", "bin", "yaml-language-server"), "--stdio"], technique, isPeer: true);
        }
    }

    private static bool PeerIsThere()
    {
        if (Directory.Exists(Path.Combine(Peer, "node_modules"))) return true;
        try
        {
            using var npm = Child.Start("npm", Peer, "ci");
            npm.StandardInput.Close();
            npm.OutputDataReceived += static (_, _) => { };
            npm.ErrorDataReceived += static (_, _) => { };
            npm.BeginOutputReadLine();
            npm.BeginErrorReadLine();
            npm.WaitForExit();
            if (npm.ExitCode == 0) return true;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // Without Node.js there is no peer.
        }

        Figures.Say("  (the YAML language server is not installed and not measured: it needs npm)");
        return false;
    }

    private static async Task MeasureAsync(string name, string program, string[] arguments, LongTechnique technique, bool isPeer)
    {
        var starts = new List<double>();
        for (var round = 0; round < Starts; round++)
        {
            await using var cold = new Session(program, arguments, technique, isPeer);
            starts.Add(await cold.OpenAsync());
            await cold.EndAsync();
        }

        Figures.Tell($"{name}: start to first diagnostics", starts);

        await using var session = new Session(program, arguments, technique, isPeer);
        await session.OpenAsync();
        Figures.Tell($"{name}: an edit of a comment", await session.EditAsync(Edits, _ => null));
        Figures.Tell($"{name}: an index offset that still covers", await session.EditAsync(Edits, round => 34 + (round * 0.002)));
        Figures.Tell($"{name}: an index offset that covers no more", await session.EditAsync(Edits, round => 70 + (round * 0.02)));
        Figures.Tell($"{name}: a key's name half typed, to the list", await session.CompleteAsync(Edits));
        if (session.PeakMegabytes() is { } peak) Figures.Tell($"{name}: memory at its peak", peak, "MB");
        await session.EndAsync();
    }

    private sealed class Session : IAsyncDisposable
    {
        private readonly Process process;
        private readonly RawLspClient client;
        private readonly LongTechnique technique;
        private readonly bool isPeer;
        private readonly long start = Stopwatch.GetTimestamp();
        private readonly string uri;
        private readonly int line;
        private readonly int character;
        private readonly string text;
        private int version;
        private bool hasComment;

        public Session(string program, string[] arguments, LongTechnique technique, bool isPeer)
        {
            (this.technique, this.isPeer) = (technique, isPeer);
            uri = new Uri(technique.Path).AbsoluteUri;

            // Something to find stays in it, so that every edit moves a diagnostic and there is something to publish: a key that no schema knows.
            text = technique.Text.Replace("couplant: gel", "couplant: gel\nmystery: 1", StringComparison.Ordinal);
            var at = text.IndexOf("index-offset: 34.00", StringComparison.Ordinal) + "index-offset: ".Length;
            line = text.AsSpan(0, at).Count('\n');
            character = at - text.LastIndexOf('\n', at) - 1;
            process = Child.Start(program, technique.Folder, arguments);
            process.ErrorDataReceived += static (_, _) => { };
            process.BeginErrorReadLine();
            client = new RawLspClient(process.StandardInput.BaseStream, process.StandardOutput.BaseStream) { Answer = PeerSettings };
        }

        public async Task<double> OpenAsync()
        {
            await client.InitializeAsync(new Uri(technique.Folder).AbsoluteUri);
            await client.OpenAsync(uri, text, ++version);
            await client.DiagnosticsAsync(uri, sent => ((JsonArray)sent["diagnostics"]!).Count > 0);
            return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
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
                hasComment = !hasComment;
                if (offset(round) is { } number)
                {
                    var row = line + (hasComment ? 1 : 0);
                    changes.Add(RawLspClient.Change(row, character, row, character + 5, number.ToString("00.00", CultureInfo.InvariantCulture)));
                }

                var now = ++version;
                var wanted = client.Received.Count;
                var began = Stopwatch.GetTimestamp();
                await client.ChangeAsync(uri, now, [.. changes]);
                await client.DiagnosticsAsync(uri, sent => IsAfter(sent, now, wanted));
                times[round] = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
            }

            return times;
        }

        public async Task<double[]> CompleteAsync(int count)
        {
            // On a line of its own below the component's key.
            var row = text[..text.IndexOf("component:", StringComparison.Ordinal)].Count(c => c == '\n') + 1 + (hasComment ? 1 : 0);
            await client.ChangeAsync(uri, ++version, RawLspClient.Change(row, 0, row, 0, "  coat\n"));
            var times = new double[count];
            for (var round = 0; round < count; round++)
            {
                // A letter goes and another comes: completion sees a text that it has not seen.
                await client.ChangeAsync(uri, ++version, RawLspClient.Change(row, 5, row, 6, round % 2 == 0 ? "s" : "t"));
                var began = Stopwatch.GetTimestamp();
                await client.RequestAsync("textDocument/completion", RawLspClient.At(uri, row, 6));
                times[round] = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
            }

            await client.ChangeAsync(uri, ++version, RawLspClient.Change(row, 0, row + 1, 0, ""));
            return times;
        }

        /// <summary>What the system counts as resident at most; Linux alone tells.</summary>
        public double? PeakMegabytes()
        {
            var status = $"/proc/{process.Id}/status";
            if (!File.Exists(status)) return null;
            var peak = File.ReadLines(status).FirstOrDefault(row => row.StartsWith("VmHWM:", StringComparison.Ordinal));
            return peak is null ? null : double.Parse(peak.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) / 1024;
        }

        public async Task EndAsync()
        {
            await client.EndAsync();
            using var patience = new CancellationTokenSource(RawLspClient.Patience);
            await process.WaitForExitAsync(patience.Token);
        }

        public async ValueTask DisposeAsync()
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
            await client.DisposeAsync();
            process.Dispose();
        }

        /// <summary>The peer asks for its settings: one schema, nothing from anywhere else.</summary>
        private static JsonArray? PeerSettings(JsonObject request)
        {
            if ((string?)request["method"] != "workspace/configuration") return null;
            var schema = new Uri(Path.Combine(Repository.Root, "schemas", "technique.schema.json")).AbsoluteUri;
            var settings = new JsonObject
            {
                ["validate"] = true, ["completion"] = true, ["hover"] = true, ["schemaStore"] = new JsonObject { ["enable"] = false },
                ["schemas"] = new JsonObject { [schema] = "*.technique.yaml" },
            };
            return [.. ((JsonArray)request["params"]!["items"]!).Select(item => (string?)item!["section"] == "yaml" ? settings.DeepClone() : new JsonObject())];
        }

        // The peer tells no version: the first report after the edit is its answer.
        private bool IsAfter(JsonObject sent, int now, int wanted) =>
            sent["version"] is { } told ? (int)told == now : client.Received.Skip(wanted).Any(message => ReferenceEquals(message["params"], sent));
    }
}
