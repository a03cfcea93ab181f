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
    private readonly PathCall paths = new();
    private readonly Option<string> settings = Options.Text("--settings", "FILE", "Settings to use in place of the workspace's own");

    private readonly Option<string[]> requirements = new("--requirements")
    {
        HelpName = "SET", Description = "A requirement set to hold every technique to, beside its own (repeatable)", Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    public void AddTo(Command command)
    {
        paths.AddTo(command);
        command.Options.Add(settings);
        command.Options.Add(requirements);
    }

    /// <inheritdoc cref="PathCall.Select"/>
    public FileSelection? Select(ParseResult call, IReadOnlyList<string> given, Terminal terminal) => paths.Select(call, given, terminal);

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
                terminal.Say($"--settings {path}: {PathCall.Words(read.Fault)}");
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
}
