using System.CommandLine;
using TechLint.Reports;

namespace TechLint.Cli.Commands;

/// <summary><c>techlint explain [RULE]</c>.</summary>
internal sealed class ExplainCommand : ICommand
{
    private readonly Argument<string> name = new("RULE") { Description = "A rule's name, as findings print it in brackets", Arity = ArgumentArity.ZeroOrOne };

    public ExplainCommand() =>
        Command = new Command("explain", "Tell what a rule means, why it matters, what to do and where its limits come from; without RULE, list all rules.")
        {
            name,
        };

    public Command Command { get; }

    public int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation)
    {
        if (call.GetValue(name) is not { } wanted)
        {
            ExplainReport.WriteList(terminal.Output, engine.Rules);
            return ExitStatus.Clean;
        }

        var rule = engine.Rules.FirstOrDefault(rule => string.Equals(rule.Name, wanted, StringComparison.Ordinal));
        if (rule is null)
        {
            terminal.Say($"there is no rule '{wanted}'{Nearest.Suggestion(wanted, engine.Rules.Select(rule => rule.Name))}");
            return ExitStatus.Unusable;
        }

        ExplainReport.WriteRule(terminal.Output, rule, engine.LimitsOf(rule));
        return ExitStatus.Clean;
    }
}
