using System.Text;

namespace TechLint.Cli;

/// <summary>All that a command knows of the world outside: streams, place, day.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="RawOutput">Standard output as bytes, for the language server.</param>
/// <param name="Output">Standard output, for results.</param>
/// <param name="Error">Standard error, for notes.</param>
/// <param name="Color">Whether results may be coloured.</param>
/// <param name="WorkingFolder">Full path that relative ones start from.</param>
/// <param name="Today">In UTC.</param>
internal sealed record Terminal(
    Stream Input, Stream RawOutput, TextWriter Output, TextWriter Error, bool Color, string WorkingFolder, Func<DateOnly> Today)
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static Terminal OfProcess()
    {
        var output = Console.OpenStandardOutput();
        return new Terminal(
            Console.OpenStandardInput(), output, Writer(output), Writer(Console.OpenStandardError()), MayColor(), CurrentFolder(), Clock.Today);
    }

    /// <summary>A message of the program itself, in the GNU form.</summary>
    public void Say(string message) => Error.Write($"techlint: {message}\n");

    public static StreamWriter Writer(Stream stream) => new(stream, Utf8, 1 << 16) { NewLine = "\n" };

    // A folder that was deleted under the caller's feet has no path; nothing relative is found from here either.
    private static string CurrentFolder()
    {
        try
        {
            return Environment.CurrentDirectory;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        }
    }

    // https://no-color.org: any value but an empty one turns colour off.
    private static bool MayColor() =>
        !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb");
}
