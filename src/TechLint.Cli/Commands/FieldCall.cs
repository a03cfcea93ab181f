using System.CommandLine;
using TechLint.Engine;
using TechLint.Model.Shape;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Cli.Commands;

/// <summary>The options of <c>compute</c> that ask for a simulated field.</summary>
internal sealed class FieldCall
{
    private readonly Option<string> beam = Options.Text(
        "--field", "BEAM",
        "Write the simulated pulse-echo amplitude of this beam (BEAM or SETUP/BEAM) over the section as CSV: y and z in mm, amplitude in dB relative to its maximum, "
        + "for the thinnest wall and least diameter unless others are given");

    private readonly Option<LawChoice?> law = Options.Law(
        "--law", "With --field: the law of this angle in the part, such as 55, or 'all' for the greatest over all laws [default: the one in the middle]");

    private readonly Option<string> output = Options.Text("--output", "FILE", "With --field: where to write the map [default: standard output]");

    private readonly Option<bool> coverage = new("--field-coverage")
    {
        Description = "Work out as well what share of the volume lies within 6 dB (sensitivity-drop) of the loudest axis at equal path, from the simulated field (takes from half a second to some seconds a case)",
    };

    public void AddTo(Command command)
    {
        command.Options.Add(beam);
        command.Options.Add(law);
        command.Options.Add(output);
        command.Options.Add(coverage);
    }

    public bool IsAsked(ParseResult call) => call.GetValue(beam) is not null;

    public bool WithCoverage(ParseResult call) => call.GetValue(coverage);

    /// <summary>What does not go together; null where all does.</summary>
    public string? Complaint(ParseResult call)
    {
        if (!IsAsked(call) && call.GetValue(law) is not null) return "--law needs --field BEAM";
        if (!IsAsked(call) && call.GetValue(output) is not null) return "--output needs --field BEAM";
        return call.GetValue(output) is { } place && FormatKinds.Of(place) is not null
            ? $"--output {place}: a map never takes the place of a technique, library, requirement set or settings file"
            : null;
    }

    public FieldRequest RequestOf(ParseResult call, Length? thickness, Length? outsideDiameter) =>
        new(call.GetValue(beam) ?? "", call.GetValue(law) ?? default, thickness, outsideDiameter);

    public int Run(ParseResult call, Terminal terminal, ComputedField? field, string path)
    {
        if (field is null || field.Map.NotComputed is not null)
        {
            terminal.Say(field is null ? $"{path}: cannot be computed; 'techlint check' says why" : $"{path}: --field {field.Map.Beam}: {field.Map.NotComputed}");
            return ExitStatus.Unusable;
        }

        if (call.GetValue(output) is not { } place || string.Equals(place, "-", StringComparison.Ordinal))
        {
            FieldCsvReport.Write(terminal.Output, field);
            return ExitStatus.Clean;
        }

        if (place.Length > 0 && OutputFile.TryWrite(Path.GetFullPath(place, terminal.WorkingFolder), writer => FieldCsvReport.Write(writer, field))) return ExitStatus.Clean;
        terminal.Say($"--output {place}: cannot be written");
        return ExitStatus.Unusable;
    }
}
