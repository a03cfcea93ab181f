using System.CommandLine;

namespace TechLint.Cli.Commands;

/// <summary><c>techlint lsp</c>.</summary>
internal sealed class LspCommand : ICommand
{
    public Command Command { get; } = new("lsp", "Serve an editor: the language server on standard input and output.")
    {
        // Editors' clients add it out of habit; it is the only way there is.
        new Option<bool>("--stdio") { Hidden = true },
    };

    public int Run(ParseResult call, Terminal terminal, IEngine engine, CancellationToken cancellation) =>
        engine.ServeEditorAsync(terminal.Input, terminal.RawOutput, cancellation).GetAwaiter().GetResult();
}
