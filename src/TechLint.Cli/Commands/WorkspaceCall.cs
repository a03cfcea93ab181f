using System.CommandLine;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Model.Requirements;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Cli.Commands;

/// <summary>The options that say which workspace a command works in, and by which settings and requirements.</summary>
internal sealed class WorkspaceCall
{
    private readonly Option<string> root = Options.Text("--root", "DIR", "The root of the workspace [default: the nearest folder upwards with techlint.yaml]");
    private readonly Option<string> settings = Options.Text("--settings", "FILE", "Settings to use in place of the workspace's own");
    private readonly Option<string> standardInputName = Options.Text("--stdin-filename", "PATH", "The file that standard input, named -, stands for");

    private readonly Option<string[]> requirements = new("--requirements")
    {
        HelpName = "SET", Description = "A requirement set to hold every technique to, beside its own (repeatable)", Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    public void AddTo(Command command)
    {
        command.Options.Add(root);
        command.Options.Add(settings);
        command.Options.Add(requirements);
        command.Options.Add(standardInputName);
    }

    /// <summary>The files meant; null where some path cannot be used, which is then said.</summary>
    public FileSelection? Select(ParseResult call, IReadOnlyList<string> paths, Terminal terminal)
    {
        var given = call.GetValue(root);
        if (given is not null && !Directory.Exists(Path.GetFullPath(given, terminal.WorkingFolder)))
        {
            terminal.Say($"--root {given}: no such folder");
            return null;
        }

        var selection = FileSelection.Of(terminal.WorkingFolder, paths, given, call.GetValue(standardInputName));
        foreach (var folder in selection.NestedWorkspaces)
        {
            var shown = Shown(terminal, folder);
            terminal.Say($"{shown}: a workspace of its own, left out; 'techlint {call.CommandResult.Command.Name} {shown}' looks at it");
        }

        foreach (var problem in selection.Problems) terminal.Say($"{problem.Path}: {Words(problem.Fault)}");
        return selection.Problems.IsEmpty ? selection : null;
    }

    /// <summary>How to judge; null where the settings named cannot be read, which is then said.</summary>
    public WorkspaceOptions? OptionsOf(ParseResult call, Terminal terminal)
    {
        SourceText? text = null;
        if (call.GetValue(settings) is { } path)
        {
            var read = path.Length == 0
                ? new FileText(null, LookupFault.NotFound)
                : DiskStore.ReadNamed(Path.GetFullPath(path, terminal.WorkingFolder), path);
            if (read.Source is null)
            {
                terminal.Say($"--settings {path}: {Words(read.Fault)}");
                return null;
            }

            text = read.Source;
        }

        return new WorkspaceOptions(terminal.Today(), AsOf: null, text, [.. call.GetValue(requirements) ?? []]);
    }

    /// <summary>A set that is not there would judge nothing, unseen: the call is refused.</summary>
    public static bool KnowsSets(IEngine engine, FileSelection selection, WorkspaceOptions options, Terminal terminal)
    {
        foreach (var id in selection.Workspaces.SelectMany(one => engine.UnknownSets(one.Store, options)).Distinct(StringComparer.Ordinal))
        {
            var nearest = NearestName.Of(id, BuiltInSets.Ids);
            terminal.Say($"--requirements {id}: no such requirement set{(nearest is null ? "" : $"; the nearest is {nearest}")}");
            return false;
        }

        return true;
    }

    /// <summary>The text on standard input, where a path asked for it; false where it is none, which is then said.</summary>
    public static bool TryReadInput(FileSelection selection, Terminal terminal, out SourceText? text)
    {
        text = null;
        if (selection.StandardInput is not { } place) return true;
        var bytes = new byte[DiskStore.LargestFile + 1];
        var count = terminal.Input.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        var decoded = count <= DiskStore.LargestFile ? TextDecoding.Decode(bytes.AsSpan(0, count)) : null;
        if (decoded is not null) text = new SourceText(place.Path, decoded);
        else terminal.Say($"standard input: {Words(count > DiskStore.LargestFile ? LookupFault.TooLarge : LookupFault.NotText)}");
        return decoded is not null;
    }

    /// <summary>A path as it is opened from the working folder, forward slashes.</summary>
    public static string Shown(Terminal terminal, string fullPath) =>
        Path.GetRelativePath(terminal.WorkingFolder, fullPath).Replace(Path.DirectorySeparatorChar, '/');

    private static string Words(SelectionFault fault) => fault switch
    {
        SelectionFault.NotFound => "no such file or folder",
        SelectionFault.UnknownKind =>
            $"not a file to judge: these end in {FormatKinds.TechniqueEnding}, {FormatKinds.EquipmentEnding} or {FormatKinds.RequirementsEnding}, or are named {FormatKinds.SettingsName}",
        SelectionFault.OutsideRoot => "outside the workspace",
        SelectionFault.NothingMatched => "nothing to check here",
        SelectionFault.Unnamed => "standard input needs --stdin-filename, to say what it is",
        _ => "cannot be read",
    };

    private static string Words(LookupFault fault) => fault switch
    {
        LookupFault.NotFound => "no such file",
        LookupFault.NotAFile => "a folder, not a file",
        LookupFault.TooLarge => "larger than 4 MiB",
        LookupFault.NotText => "neither UTF-8 nor UTF-16 text",
        LookupFault.OutsideWorkspace => "outside the workspace",
        _ => "cannot be read",
    };
}
