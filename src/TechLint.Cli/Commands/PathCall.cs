using System.CommandLine;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Cli.Commands;

/// <summary>The paths of a call, and the options that say which workspace they lie in.</summary>
internal sealed class PathCall
{
    private readonly Option<string> root = Options.Text("--root", "DIR", "The root of the workspace [default: the nearest folder upwards with techlint.yaml]");
    private readonly Option<string> standardInputName = Options.Text("--stdin-filename", "PATH", "The file that standard input, named -, stands for");

    public void AddTo(Command command)
    {
        command.Options.Add(root);
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

    public static string Words(LookupFault fault) => fault switch
    {
        LookupFault.NotFound => "no such file",
        LookupFault.NotAFile => "a folder, not a file",
        LookupFault.TooLarge => "larger than 4 MiB",
        LookupFault.NotText => "neither UTF-8 nor UTF-16 text",
        LookupFault.OutsideWorkspace => "outside the workspace",
        _ => "cannot be read",
    };
}
