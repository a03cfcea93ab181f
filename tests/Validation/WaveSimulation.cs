using System.Text.Json;
using FluentAssertions;

namespace TechLint.Tests.Validation;

/// <summary>
/// What the offline wave simulation found (<c>Data/wave-*.json</c>, written by <c>tests/Tools -- wave-simulation</c>): finite differences of the elastic wave
/// equation, no rays. Held to the inputs that a test asks for: data of other inputs are refused.
/// </summary>
internal sealed class WaveSimulation
{
    private readonly List<IReadOnlyDictionary<string, double>> runs;

    private WaveSimulation(List<IReadOnlyDictionary<string, double>> runs, string source) => (this.runs, Source) = (runs, source);

    public string Source { get; }

    /// <param name="name">Of the simulation.</param>
    /// <param name="inputs">Every input it must have been run with, and no other.</param>
    public static WaveSimulation Of(string name, IReadOnlyDictionary<string, double> inputs)
    {
        using var text = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", $"wave-{name}.json")));
        var kept = Numbers(text.RootElement.GetProperty("inputs"));
        var renew = $"the data must be of the test's inputs: dotnet run -c Release --project tests/Tools -- wave-simulation {name}";
        kept.Keys.Should().BeEquivalentTo(inputs.Keys, renew);
        foreach (var (key, value) in inputs) kept[key].Should().BeApproximately(value, 1e-5, $"{key}: {renew}");
        var elements = text.RootElement.GetProperty("runs").EnumerateArray().ToList();
        elements.Should().HaveCountGreaterThan(1, "a second resolution shows that the grid does not matter");
        var grid = elements[^1].GetProperty("grid");
        var points = grid.GetProperty("points-per-transverse-wavelength").GetDouble();
        return new WaveSimulation(
            [.. elements.Select(run => Numbers(run.GetProperty("found")))],
            FormattableString.Invariant($"elastic wave simulation by finite differences, {points} points a transverse wavelength (Data/wave-{name}.json)"));
    }

    /// <summary>As the finest grid has it; the one before must have it too.</summary>
    /// <param name="what">Name of what was found.</param>
    /// <param name="convergence">How far the two may differ.</param>
    public double this[string what, double convergence]
    {
        get
        {
            runs[^1][what].Should().BeApproximately(runs[^2][what], convergence, $"{what} must not depend on the grid");
            return runs[^1][what];
        }
    }

    private static Dictionary<string, double> Numbers(JsonElement element) =>
        element.EnumerateObject().ToDictionary(pair => pair.Name, pair => pair.Value.GetDouble(), StringComparer.Ordinal);
}
