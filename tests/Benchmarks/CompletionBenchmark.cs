using System.Diagnostics;
using TechLint.Engine;
using TechLint.Engine.Completing;
using TechLint.Syntax;

namespace TechLint.Tests.Benchmarks;

/// <summary>
/// From a completion request to its list, in this process: a value, a key, a unit, a name and a model path, typed at many places of a text of
/// 3,000 lines. Once with the text read already, as after a pause, and once with the reading, as at the first letter.
/// </summary>
internal static class CompletionBenchmark
{
    private const int Lines = 3000;
    private const int Rounds = 40;

    public static void Run()
    {
        using var file = new LongTechnique(Lines);
        var snapshot = InProcess.Fresh(file.Folder);
        const string Path = "techniques/long.technique.yaml";
        var places = Places(file.Text).ToArray();
        foreach (var counts in new[] { false, true })
        {
            var times = new List<double>();
            for (var round = 0; round < Rounds; round++)
            {
                foreach (var (text, offset) in places)
                {
                    var typed = snapshot.With(Path, new SourceText(Path, text));
                    if (!counts) _ = typed.TreeOf(Path);
                    var start = Stopwatch.GetTimestamp();
                    if (Completer.At(typed, Path, offset) is not { Choices.Length: > 0 }) throw new InvalidOperationException("nothing is offered: " + text[Math.Max(0, offset - 30)..offset]);
                    if (round >= Rounds / 4) times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                }
            }

            times.Sort();
            Figures.Say(FormattableString.Invariant(
                $"  {file.Lines} lines, {places.Length} places, {(counts ? "text to be read" : "text read")}: p50 {times[times.Count / 2]:0.00} ms, p99 {times[times.Count * 99 / 100]:0.00} ms"));
        }
    }

    private static IEnumerable<(string Text, int Offset)> Places(string text)
    {
        foreach (var part in new[] { 0, 9, 19, 29, 38 })
        {
            var start = text.IndexOf(FormattableString.Invariant($"- id: part-{part}\n"), StringComparison.Ordinal);
            yield return Typed("wave: transverse", "wave: tr");
            yield return Typed("      run-on: 50 mm", "      ru");
            yield return Typed("run-off: 50 mm", "run-off: 50");
            yield return Typed("probe: pa-5-32", "probe: ");
            yield return Typed("    frame: frame-four", "    ");

            (string, int) Typed(string old, string @new)
            {
                var at = text.IndexOf(old, start, StringComparison.Ordinal);
                return (text[..at] + @new + text[(at + old.Length)..], at + @new.Length);
            }
        }
    }
}
