using TechLint.LanguageServer.Features;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Session;

internal sealed partial class ServerMethods
{
    public Task<TextEdit[]?> FormattingAsync(TextDocumentParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, Formatting.Whole, cancellation);

    public Task<TextEdit[]?> RangeFormattingAsync(TextDocumentRangeParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, parameters?.Range is { Start: not null, End: not null }, context => Formatting.Within(context, parameters!.Range!), cancellation);

    public Task<TextEdit[]?> WillSaveWaitUntilAsync(WillSaveParams? parameters, CancellationToken cancellation) =>
        ServeAsync(parameters?.TextDocument?.Uri, true, context => Formatting.BeforeSaving(context, parameters!.Reason), cancellation);
}
