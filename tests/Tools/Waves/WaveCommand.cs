using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// Runs the wave simulations and writes what they found, inputs beside it, into <c>tests/Validation/Data</c>. Some minutes each: never part of a build.
/// </summary>
internal static class WaveCommand
{
    private const int Workers = 2;

    /// <summary>Handbook values: cross-linked polystyrene and low-alloy steel.</summary>
    private static readonly Solid Polystyrene = new(2.337, 1.155, 1.05);

    private static readonly Solid Steel = new(5.920, 3.255, 7.85);

    private static readonly double[] Steps = [0.05, 0.04];

    public static int Run(ReadOnlySpan<string> names)
    {
        string[] all = ["steered-beam-45", "steered-beam-60", "steered-wide-60", "curved-bounce"];
        var trial = names.Length > 1 && string.Equals(names[0], "--trial-step", StringComparison.Ordinal) ? names[1] : null;
        if (trial is not null) names = names[2..];
        double[] steps = trial is null ? Steps : [double.Parse(trial, CultureInfo.InvariantCulture)];
        if (names.Length == 0) names = all;
        foreach (var name in names)
        {
            switch (name)
            {
                case "steered-beam-45":
                    Write(name, Steered(45, 16), steps, keep: trial is null);
                    break;
                case "steered-beam-60":
                    Write(name, Steered(60, 16), steps, keep: trial is null);
                    break;
                case "steered-wide-60":
                    Write(name, Steered(60, 32), steps, keep: trial is null);
                    break;
                case "curved-bounce":
                    var bounce = new CurvedBounce(45, 5, 200, 20, 2.5, Steel);
                    Write(name, (bounce.Inputs, step => bounce.Run(step, Workers)), steps, keep: trial is null);
                    break;
                default:
                    Console.Error.WriteLine($"simulations: {string.Join(", ", all)}");
                    return 2;
            }
        }

        return 0;
    }

    private static (IReadOnlyDictionary<string, double> Inputs, Func<double, WaveRun> Run) Steered(double angle, int elements)
    {
        // An array of 0.5 mm pitch, element 1 at a height of 5 mm on a wedge of 36 degrees.
        var beam = new SteeredBeam(
            angle, 5, elements, 0.5, 0.45, 36, 5 + ((elements - 1) * 0.25 * Math.Sin(36 * Math.PI / 180)), Polystyrene, Steel, MeasuredFrom: 20, MeasuredTo: 40);
        return (beam.Inputs, step => beam.Run(step, Workers));
    }

    private static void Write(string name, (IReadOnlyDictionary<string, double> Inputs, Func<double, WaveRun> Run) simulation, double[] steps, bool keep)
    {
        var runs = new JsonArray();
        foreach (var step in steps)
        {
            var clock = Stopwatch.StartNew();
            var run = simulation.Run(step);
            var found = new JsonObject();
            foreach (var (key, value) in run.Found) found[key] = Math.Round(value, 4);
            runs.Add(new JsonObject
            {
                ["grid"] = new JsonObject
                {
                    ["step-mm"] = step,
                    ["points-per-transverse-wavelength"] = Math.Round(run.PointsPerWavelength, 2),
                    ["columns"] = run.Grid.Columns,
                    ["rows"] = run.Grid.Rows,
                    ["time-step-ns"] = Math.Round(run.Grid.TimeStep * 1000, 4),
                    ["steps"] = run.Steps,
                },
                ["found"] = found,
                ["seconds"] = Math.Round(clock.Elapsed.TotalSeconds),
            });
            Console.WriteLine($"{name} {step.ToString(CultureInfo.InvariantCulture)} mm: {found.ToJsonString()} in {clock.Elapsed.TotalSeconds:F0} s");
        }

        if (!keep) return;
        var inputs = new JsonObject();
        foreach (var (key, value) in simulation.Inputs) inputs[key] = Math.Round(value, 6);
        var text = new JsonObject
        {
            ["simulation"] = name,
            ["method"] = "finite differences, plane-strain elastic waves, velocity and stress on a staggered grid, fourth order in space",
            ["made-by"] = $"dotnet run -c Release --project tests/Tools -- wave-simulation {name}",
            ["inputs"] = inputs,
            ["runs"] = runs,
        };
        File.WriteAllText(Repository.At("tests", "Validation", "Data", $"wave-{name}.json"), text.ToJsonString(Options) + "\n");
    }

    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
