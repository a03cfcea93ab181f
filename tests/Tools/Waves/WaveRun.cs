namespace TechLint.Tests.Tools.Waves;

/// <summary>What one run of a simulation found, and on what grid.</summary>
internal sealed record WaveRun(WaveGrid Grid, int Steps, double PointsPerWavelength, IReadOnlyDictionary<string, double> Found)
{
    public static double[][] Map(WaveGrid grid) => [.. Enumerable.Range(0, grid.Rows + 1).Select(_ => new double[grid.Columns])];

    /// <summary>About ten samples a period are plenty for a mean square.</summary>
    public static int MapEvery(WaveGrid grid, double frequency) => Math.Max(1, (int)(0.1 / frequency / grid.TimeStep));
}
