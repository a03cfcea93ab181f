using System.Collections.Immutable;
using System.CommandLine;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Reports;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Cli.Commands;

/// <summary><c>techlint check [PATH...]</c>.</summary>
internal sealed class CheckCommand : ICommand
{
    private const string InternalErrorRule = "internal-error";

    private readonly Argument<string[]> paths = new("PATH")
    {
        Description = "Files, folders or patterns to check; - for standard input [default: this folder]", Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Option<ReportFormat?> format = Options.Choice(
        "--format", "How to tell the findings [default: text]",
        ("text", ReportFormat.Text), ("json", ReportFormat.Json), ("sarif", ReportFormat.Sarif));

    private readonly Option<string> output = Options.Text("--output", "FILE", "Where to write the findings [default: standard output]");
    private readonly Option<Severity?> failOn = Options.FailOn();

    private readonly Option<DateOnly?> asOf = Options.Date(
        "--as-of", "The day to judge validity by [default: that of the settings, else today in UTC]");

    private readonly Option<int?> jobs = Options.Jobs();
    private readonly WorkspaceCall workspace = new();

    public CheckCommand()
    {
        Command = new Command("check", "Check techniques, equipment libraries, requirement sets and settings, and list what is wrong.")
        {
            paths, format, output, failOn, asOf, jobs,
        };
        workspace.AddTo(Command);
    }

    public Command Command { get; }

    public int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        if (workspace.OptionsOf(call, terminal) is not { } options) return ExitStatus.Unusable;
        options = options with { AsOf = call.GetValue(asOf) };
        if (call.GetValue(output) is { } place && FormatKinds.Of(place) is not null)
        {
            terminal.Say($"--output {place}: findings never take the place of a technique, library, requirement set or settings file");
            return ExitStatus.Unusable;
        }

        if (workspace.Select(call, call.GetValue(paths) ?? [], terminal) is not { } selection) return ExitStatus.Unusable;
        if (!WorkspaceCall.KnowsSets(engine, selection, options, terminal)) return ExitStatus.Unusable;
        if (!PathCall.TryReadInput(selection, terminal, out var input)) return ExitStatus.Unusable;

        if (SettingsFault(engine, selection, options, cancellation) is { } fault)
        {
            terminal.Say($"--settings {options.SettingsText!.Path}: {fault}");
            return ExitStatus.Unusable;
        }

        var folder = CommonFolder(selection.Workspaces);
        var runs = new List<(string Folder, CheckRun Run)>();
        foreach (var one in selection.Workspaces)
        {
            var overlay = input is not null && string.Equals(selection.StandardInput?.Root, one.Store.Root, StringComparison.Ordinal) ? input : null;
            runs.Add((FolderFrom(folder, one.Store.Root), Check(engine, one, options, overlay, call.GetValue(jobs) ?? Environment.ProcessorCount, cancellation)));
            if (OfBrokenSettings(engine, one, options, cancellation) is { } settings) runs.Add((FolderFrom(folder, one.Store.Root), settings));
        }

        // A run that broke has looked at nothing and knows no day of its own.
        if (runs.Where(one => one.Run.Summary.Files > 0).Select(one => one.Run.AsOf).Distinct().Count() > 1)
        {
            terminal.Say("these workspaces are judged by different days: name one with --as-of, or check them apart");
            return ExitStatus.Unusable;
        }

        var run = RunMerge.Of(runs);
        var status = StatusOf(run, call.GetValue(failOn) ?? Severity.Error);
        if (run.Summary.Files == 0 && run.Findings.IsEmpty)
        {
            terminal.Say("nothing was left to check");
            status = ExitStatus.Unusable;
        }

        return Write(call, terminal, engine, run, FolderFrom(terminal.WorkingFolder, folder), status);
    }

    private static CheckRun Check(
        IEngine engine, SelectedWorkspace one, WorkspaceOptions options, SourceText? overlay, int jobs, CancellationToken cancellation)
    {
        try
        {
            return engine.Check(one.Store, options, overlay, one.Files, jobs, cancellation);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return Broken(one.Files[0], options, fault);
        }
    }

    /// <summary>
    /// The run over a workspace's settings where they are in error and nobody asked about them: a check by other settings than its author meant must
    /// not look like his.
    /// </summary>
    private static CheckRun? OfBrokenSettings(IEngine engine, SelectedWorkspace one, WorkspaceOptions options, CancellationToken cancellation)
    {
        const string name = FormatKinds.SettingsName;
        if (options.SettingsText is not null || one.Files.Contains(name, StringComparer.Ordinal) || one.Store.Probe(name) != LookupFault.None) return null;
        var run = Check(engine, one with { Files = [name] }, options, null, 1, cancellation);
        return run.Summary.Errors > 0 ? run : null;
    }

    /// <summary>The first thing wrong with the settings that the call names; null where they can be used.</summary>
    private static string? SettingsFault(IEngine engine, FileSelection selection, WorkspaceOptions options, CancellationToken cancellation)
    {
        if (options.SettingsText is not { } text) return null;
        const string name = FormatKinds.SettingsName;
        var run = Check(engine, selection.Workspaces[0] with { Files = [name] }, options, new SourceText(name, text.Text), 1, cancellation);
        return run.Findings.Select(item => item.Finding).FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message;
    }

    // What went wrong inside is ours to mend: the reader is told that nothing was judged, and which kind of fault to report.
    private static CheckRun Broken(string file, WorkspaceOptions options, Exception fault) => new(
        options.AsOf ?? options.Today,
        [
            new CheckedFinding(
                new Finding(
                    InternalErrorRule, Severity.Error, file, new TextSpan(0, 0), "",
                    "an error inside TechLint ended the check of this workspace, and nothing in it was judged",
                    [new Evidence("kind", null, fault.GetType().Name, "")], ["please report it, with the file if you may"], null, [], []),
                null, false),
        ],
        new CheckSummary(0, 1, 0, 0, 0, 0, 1, 0, 0), ImmutableDictionary<string, SourceText>.Empty);

    private static int StatusOf(CheckRun run, Severity failOn)
    {
        var counted = run.Findings.Where(item => item.Counts).Select(item => item.Finding).ToList();
        if (run.Findings.Any(item => string.Equals(item.Finding.Rule, InternalErrorRule, StringComparison.Ordinal))) return ExitStatus.InternalError;
        if (counted.Any(finding => finding.Severity == Severity.Error && FormatKinds.Of(finding.File) == FormatKind.Settings))
        {
            return ExitStatus.Unusable;
        }

        return counted.Any(finding => finding.Severity >= failOn) ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private int Write(ParseResult call, Terminal terminal, IEngine engine, CheckRun run, string folder, int status)
    {
        var chosen = call.GetValue(format) ?? ReportFormat.Text;
        var file = call.GetValue(output);
        var toFile = file is not null && !string.Equals(file, FileSelection.StandardInputName, StringComparison.Ordinal);
        void Content(TextWriter writer)
        {
            switch (chosen)
            {
                case ReportFormat.Json:
                    JsonReport.Write(writer, run, CommandLine.Tool);
                    break;
                case ReportFormat.Sarif:
                    SarifReport.Write(writer, run, CommandLine.Tool, engine.Rules, status);
                    break;
                default:
                    var text = new TextReport(writer, folder, terminal.Color && !toFile);
                    text.WriteFindings(run);
                    // A file is a record, and a record states its day.
                    if (toFile) text.WriteSummary(run);
                    break;
            }
        }

        if (!toFile)
        {
            Content(terminal.Output);
        }
        else if (file!.Length == 0 || !OutputFile.TryWrite(Path.GetFullPath(file, terminal.WorkingFolder), Content))
        {
            terminal.Say($"--output {file}: cannot be written");
            return ExitStatus.Unusable;
        }

        if (chosen == ReportFormat.Text || toFile)
        {
            // Results first, should both streams be one terminal.
            terminal.Output.Flush();
            new TextReport(terminal.Error).WriteSummary(run);
        }

        return status;
    }

    /// <summary>The deepest folder that holds every workspace.</summary>
    private static string CommonFolder(ImmutableArray<SelectedWorkspace> workspaces)
    {
        var folder = workspaces[0].Store.Root;
        foreach (var one in workspaces)
        {
            while (FolderFrom(folder, one.Store.Root).StartsWith("../", StringComparison.Ordinal) && Path.GetDirectoryName(folder) is { } up) folder = up;
        }

        return folder;
    }

    /// <summary>The way from one folder to another, forward slashes: empty, or with a slash at its end.</summary>
    private static string FolderFrom(string from, string to)
    {
        var way = Path.GetRelativePath(from, to).Replace(Path.DirectorySeparatorChar, '/');
        return string.Equals(way, ".", StringComparison.Ordinal) ? "" : way + "/";
    }
}
