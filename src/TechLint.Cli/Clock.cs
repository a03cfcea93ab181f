namespace TechLint.Cli;

/// <summary>The only place that reads the time of day.</summary>
internal static class Clock
{
    public static DateOnly Today() => DateOnly.FromDateTime(DateTime.UtcNow);
}
