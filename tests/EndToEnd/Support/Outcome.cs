using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace TechLint.Tests.EndToEnd.Support;

/// <summary>What a program left behind: its status and all it wrote.</summary>
internal sealed record Outcome(int Status, byte[] Bytes, string Error)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    public string Output => Encoding.UTF8.GetString(Bytes);

    public JsonObject Json => (JsonObject)JsonNode.Parse(Bytes)!;

    /// <summary>Runs <c>techlint</c>.</summary>
    /// <param name="executable">A name of <see cref="Executables"/>.</param>
    public static Outcome Of(string executable, string folder, params string[] arguments) =>
        Of(executable, folder, new Dictionary<string, string>(), null, arguments);

    public static Outcome Of(
        string executable, string folder, IReadOnlyDictionary<string, string> environment, byte[]? input, params string[] arguments) =>
        OfProgram(Executables.PathOf(executable), folder, environment, input, arguments);

    public static Outcome OfProgram(
        string program, string folder, IReadOnlyDictionary<string, string> environment, byte[]? input, params string[] arguments)
    {
        using var process = Start(program, folder, environment, arguments);
        var output = new MemoryStream();
        var reading = process.StandardOutput.BaseStream.CopyToAsync(output);
        var error = process.StandardError.ReadToEndAsync();
        if (input is not null) process.StandardInput.BaseStream.Write(input);
        process.StandardInput.Close();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} {string.Join(' ', arguments)} did not end.");
        }

        reading.Wait(Patience);
        return new Outcome(process.ExitCode, output.ToArray(), error.Result);
    }

    /// <summary>A program with all three streams in our hands.</summary>
    public static Process Start(string program, string folder, IReadOnlyDictionary<string, string> environment, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        return Process.Start(start)!;
    }
}
