using System.CommandLine;
using TechLint.Engine.Files;
using TechLint.Engine.Formatting;
using TechLint.Syntax;

namespace TechLint.Cli.Commands;

/// <summary><c>techlint format [PATH...]</c>.</summary>
internal sealed class FormatCommand : ICommand
{
    private readonly Argument<string[]> paths = new("PATH")
    {
        Description = "Files, folders or patterns to format; - for standard input, formatted to standard output [default: this folder]",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Option<bool> reorder = new("--reorder") { Description = "Put keys in the canonical order too, comments with them" };
    private readonly Option<bool> check = new("--check") { Description = "Change nothing; list what would change, with exit status 1 if anything would" };
    private readonly Option<bool> diff = new("--diff") { Description = "Change nothing; print what would change as a unified diff" };
    private readonly PathCall pathCall = new();

    public FormatCommand()
    {
        Command = new Command("format", "Put the spacing of files in order. Comments, blank lines, units and digits stay as they are; the meaning never changes.")
        {
            paths, reorder, check, diff,
        };
        pathCall.AddTo(Command);
    }

    public Command Command { get; }

    public int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        if (pathCall.Select(call, call.GetValue(paths) ?? [], terminal) is not { } selection) return ExitStatus.Unusable;
        if (!PathCall.TryReadInput(selection, terminal, out var input)) return ExitStatus.Unusable;
        var (onlyChecks, showsDiff) = (call.GetValue(check), call.GetValue(diff));
        var (changed, unusable) = (0, false);
        foreach (var one in selection.Workspaces)
        {
            foreach (var file in one.Files)
            {
                cancellation.ThrowIfCancellationRequested();
                var isInput = input is not null && selection.StandardInput is { } place && string.Equals(place.Path, file, StringComparison.Ordinal)
                    && string.Equals(place.Root, one.Store.Root, StringComparison.Ordinal);
                var shown = isInput ? FileSelection.StandardInputName : PathCall.Shown(terminal, Path.Combine(one.Store.Root, file));
                var source = isInput ? input : one.Store.Read(file).Source;
                if (source is null || TextFormat.Of(source, call.GetValue(reorder)) is not { } formatted)
                {
                    terminal.Say(source is null ? $"{shown}: cannot be read" : $"{shown}: left as it is: no sound YAML; 'techlint check' says why");
                    unusable = true;
                    continue;
                }

                var changes = !string.Equals(formatted, source.Text, StringComparison.Ordinal);
                if (changes) changed++;
                if (showsDiff) UnifiedDiff.Write(terminal.Output, shown, source.Text, formatted);
                else if (onlyChecks && changes) terminal.Output.Write(shown + "\n");
                else if (!onlyChecks && isInput) terminal.Output.Write(formatted);
                else if (!onlyChecks && changes && !Replace(one.Store, file, formatted, terminal, shown)) unusable = true;
            }
        }

        return unusable ? ExitStatus.Unusable : onlyChecks && changed > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    /// <summary>A link stays one; a file that is not UTF-8 is not made so behind its author's back.</summary>
    private static bool Replace(DiskStore store, string file, string formatted, Terminal terminal, string shown)
    {
        if (store.IsUtf16(file))
        {
            terminal.Say($"{shown}: left as it is: UTF-16 text is not written");
            return false;
        }

        var place = Path.Combine(store.Root, file);
        if (!OutputFile.TryWrite(File.ResolveLinkTarget(place, returnFinalTarget: true)?.FullName ?? place, writer => writer.Write(formatted)))
        {
            terminal.Say($"{shown}: cannot be written");
            return false;
        }

        terminal.Say($"{shown}: formatted");
        return true;
    }
}
