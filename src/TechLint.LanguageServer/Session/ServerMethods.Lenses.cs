using TechLint.Engine.Hints;
using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Transport;

namespace TechLint.LanguageServer.Session;

internal sealed partial class ServerMethods
{
    /// <summary>A lens of a document that has been closed meanwhile comes back as it went out, with a title that says so.</summary>
    public async Task<CodeLens?> CodeLensResolveAsync(CodeLens? lens, CancellationToken cancellation)
    {
        if (lens is not { Range: { Start: not null, End: not null }, Data: { Uri: { } uri, Setup: { } setup } }) throw Failure(RpcErrors.InvalidParams);
        return await ServeAsync(uri, true, context => ComputedHints.Resolve(context, lens), cancellation).ConfigureAwait(false)
            ?? lens with { Command = new Command("the document is not open any more", ComputedHints.Show, [uri, setup]) };
    }

    public async Task<object?> ExecuteCommandAsync(ExecuteCommandParams? parameters, CancellationToken cancellation)
    {
        if (parameters is not { Command: ComputedHints.Show, Arguments: [{ } uri, { } setup] }) throw Failure(RpcErrors.InvalidParams);
        var figures = await ServeAsync(uri, true, context => Hinting.AllFigures(context.Snapshot, context.Path, setup), cancellation).ConfigureAwait(false);
        await client.ShowAsync(figures ?? $"There is no setup {setup} any more.").ConfigureAwait(false);
        return null;
    }
}
