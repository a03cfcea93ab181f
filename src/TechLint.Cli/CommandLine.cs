using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using TechLint.Cli.Commands;
using TechLint.Reports;

namespace TechLint.Cli;

/// <summary>From arguments to an exit status.</summary>
internal static class CommandLine
{
    public static readonly ToolInfo Tool = new("techlint", typeof(CommandLine).Assembly.GetName().Version?.ToString(3) ?? "0");

    public static int Run(IReadOnlyList<string> arguments, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        try
        {
            var status = Dispatch(arguments, terminal, engine, cancellation);
            terminal.Output.Flush();
            terminal.Error.Flush();
            return status;
        }
        catch (OperationCanceledException)
        {
            return ExitStatus.Interrupted;
        }
        catch (IOException)
        {
            // Results that cannot be written to standard output (a full disk) are lost; there may be no one left to tell.
            Tell(terminal, "the result could not be written");
            return ExitStatus.Unusable;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Tell(terminal, $"an error inside TechLint ([internal-error], {fault.GetType().Name}); please report it");
            return ExitStatus.InternalError;
        }
    }

    private static int Dispatch(IReadOnlyList<string> arguments, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        ICommand[] commands = [new CheckCommand(), new ExplainCommand(), new ComputeCommand(), new FormatCommand(), new LspCommand()];
        var version = new Option<bool>("--version") { Description = "Print the version" };
        var root = Root(commands, version);
        // An argument that starts with @ is a path like any other.
        var call = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (call.Action is HelpAction help)
        {
            help.Invoke(call, terminal.Output);
            return ExitStatus.Clean;
        }

        if (call.CommandResult.Command == root && call.UnmatchedTokens.Count == 0 && call.GetValue(version))
        {
            terminal.Output.Write($"{Tool.Name} {Tool.Version}\n");
            return ExitStatus.Clean;
        }

        if (arguments.Count == 0)
        {
            new HelpAction().Invoke(call, terminal.Error);
            return ExitStatus.Unusable;
        }

        if (Complaints(call, commands) is { Count: > 0 } complaints)
        {
            foreach (var complaint in complaints) terminal.Say(complaint);
            var name = call.CommandResult.Command == root ? "" : " " + call.CommandResult.Command.Name;
            terminal.Say($"'techlint{name} --help' tells what it takes");
            return ExitStatus.Unusable;
        }

        return commands.First(command => command.Command == call.CommandResult.Command).Run(call, terminal, engine, cancellation);
    }

    private static RootCommand Root(ICommand[] commands, Option<bool> version)
    {
        var root = new RootCommand(
            "Checks written ultrasonic weld-examination techniques before anyone scans.\n\n"
            + "Exit status: 0 done and clean; 1 findings at or above --fail-on; 2 the call, a named file or the settings could not be used, or "
            + "nothing was left to check; 3 an internal error.");
        root.Directives.Clear();
        root.Options.Remove(root.Options.Single(option => option is VersionOption));
        root.Options.Add(version);
        foreach (var command in commands) root.Subcommands.Add(command.Command);
        return root;
    }

    private static List<string> Complaints(ParseResult call, ICommand[] commands)
    {
        var command = call.CommandResult.Command;
        var options = command.Options.Where(option => !option.Hidden).Select(option => option.Name).ToList();
        var unknown = StrayOptions(call).Concat(call.UnmatchedTokens).Distinct(StringComparer.Ordinal).ToList();
        if (unknown.Count > 0)
        {
            return
            [
                .. unknown.Select(text =>
                    text.Length > 1 && text[0] == '-' ? $"unknown option '{text}'{Nearest.Suggestion(text, options)}"
                    : command is RootCommand ? $"unknown command '{text}'{Nearest.Suggestion(text, commands.Select(one => one.Command.Name))}"
                    : $"'{text}' is one argument too many"),
            ];
        }

        return [.. call.Errors.Select(error => error.Message.TrimEnd('.')).Distinct(StringComparer.Ordinal)];
    }

    // The parser takes an unknown option for a path; only what stands behind -- may look like one.
    private static IEnumerable<string> StrayOptions(ParseResult call)
    {
        var taken = call.CommandResult.Command.Arguments.SelectMany(argument => call.GetResult(argument)?.Tokens ?? []).ToHashSet();
        return call.Tokens.TakeWhile(token => token.Type != TokenType.DoubleDash)
            .Where(token => token.Type == TokenType.Argument && token.Value is ['-', _, ..] && taken.Contains(token)).Select(token => token.Value);
    }

    private static void Invoke(this HelpAction help, ParseResult call, TextWriter output)
    {
        call.InvocationConfiguration.Output = output;
        help.Invoke(call);
    }

    private static void Tell(Terminal terminal, string message)
    {
        try
        {
            terminal.Say(message);
            terminal.Error.Flush();
        }
        catch (IOException)
        {
            // No one listens any more.
        }
    }
}
