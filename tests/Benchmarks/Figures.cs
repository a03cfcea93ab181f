using System.Diagnostics;
using System.Globalization;

namespace TechLint.Tests.Benchmarks;

/// <summary>Times in milliseconds and how they are told.</summary>
internal static class Figures
{
    public static void Say(string line) => Console.WriteLine(line);

    public static double Time(Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    public static double[] Times(int count, Action work)
    {
        var times = new double[count];
        for (var i = 0; i < count; i++) times[i] = Time(work);
        return times;
    }

    public static void Tell(string what, IReadOnlyCollection<double> times) => Say(string.Create(
        CultureInfo.InvariantCulture, $"  {what,-62} p50 {Rank(times, 0.50),8:0.00} ms  p99 {Rank(times, 0.99),8:0.00} ms  ({times.Count} times)"));

    public static void Tell(string what, double value, string unit) =>
        Say(string.Create(CultureInfo.InvariantCulture, $"  {what,-62}     {value,8:0.0} {unit}"));

    /// <summary>The smallest value that at least the given share of all does not exceed.</summary>
    private static double Rank(IReadOnlyCollection<double> times, double share)
    {
        var ordered = times.Order().ToArray();
        return ordered[Math.Max((int)Math.Ceiling(share * ordered.Length) - 1, 0)];
    }
}
