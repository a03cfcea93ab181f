using System.CommandLine;

namespace TechLint.Cli.Commands;

/// <summary>One command: its words, and what it does with them.</summary>
internal interface ICommand
{
    Command Command { get; }

    /// <returns>The exit status.</returns>
    int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation);
}
