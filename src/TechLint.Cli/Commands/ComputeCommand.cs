using System.CommandLine;
using TechLint.Model.Shape;
using TechLint.Engine.Files;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Cli.Commands;

/// <summary><c>techlint compute FILE</c>.</summary>
internal sealed class ComputeCommand : ICommand
{
    private readonly Argument<string> file = new("FILE") { Description = "A technique; - for standard input", Arity = ArgumentArity.ExactlyOne };

    private readonly Option<ReportFormat?> format = Options.Choice(
        "--format", "How to tell the figures [default: text]", ("text", ReportFormat.Text), ("json", ReportFormat.Json));

    private readonly Option<Length?> thickness = Options.Length("--thickness", "Compute for this wall alone, such as '25 mm' or '1 in'");
    private readonly Option<Length?> diameter = Options.Length("--outside-diameter", "Compute for this outside diameter alone");
    private readonly Option<bool> delays = new("--delays") { Description = "Print the delay of every element of every law, in ns" };
    private readonly FieldCall field = new();
    private readonly WorkspaceCall workspace = new();

    public ComputeCommand()
    {
        Command = new Command("compute", "Print what follows from a technique, for each setup and over its ranges: beams, coverage, times.")
        {
            file, format, thickness, diameter, delays,
        };
        field.AddTo(Command);
        workspace.AddTo(Command);
    }

    public Command Command { get; }

    public int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        var path = call.GetValue(file) ?? "";
        if (Directory.Exists(Path.GetFullPath(path.Length == 0 ? "." : path, terminal.WorkingFolder)))
        {
            terminal.Say($"{path}: a folder, not a technique");
            return ExitStatus.Unusable;
        }

        if (workspace.OptionsOf(call, terminal) is not { } options) return ExitStatus.Unusable;
        if (workspace.Select(call, [path], terminal) is not { } selection) return ExitStatus.Unusable;
        if (selection.Workspaces is not [{ Files: [var only], Store: var store }] || !only.EndsWith(FormatKinds.TechniqueEnding, StringComparison.Ordinal))
        {
            terminal.Say($"{path}: not one technique (a file that ends in {FormatKinds.TechniqueEnding})");
            return ExitStatus.Unusable;
        }

        if (!WorkspaceCall.KnowsSets(engine, selection, options, terminal)) return ExitStatus.Unusable;
        if (!PathCall.TryReadInput(selection, terminal, out var input)) return ExitStatus.Unusable;
        var wall = call.GetValue(thickness);
        var outside = call.GetValue(diameter);
        if (field.Complaint(call) is { } complaint)
        {
            terminal.Say(complaint);
            return ExitStatus.Unusable;
        }

        var technique = engine.Compute(store, options, input, only, wall, outside);
        if (technique is null)
        {
            terminal.Say($"{path}: cannot be computed; 'techlint check' says why");
            return ExitStatus.Unusable;
        }

        if (technique.Setups.IsEmpty && (wall ?? outside) is not null)
        {
            terminal.Say($"{path}: no setup serves {Asked(wall, outside)}");
            return ExitStatus.Unusable;
        }

        if (field.IsAsked(call)) return field.Run(call, terminal, engine.ComputeField(store, options, input, only, field.RequestOf(call, wall, outside)), path);
        var parts = ComputeParts.Usual with { Delays = call.GetValue(delays), FieldCoverage = field.WithCoverage(call) };
        if (call.GetValue(format) == ReportFormat.Json) ComputeJsonReport.Write(terminal.Output, technique, parts);
        else new ComputeTextReport(terminal.Output, parts).Write(technique);
        return ExitStatus.Clean;
    }

    private static string Asked(Length? wall, Length? outside) => string.Join(
        " and ",
        new[] { ("thickness", wall), ("outside diameter", outside) }.Where(one => one.Item2 is not null)
            .Select(one => $"{one.Item1} {Digits.Text(Digits.Rounded(one.Item2!.Value.Millimetres, 4) ?? 0)} mm"));
}
