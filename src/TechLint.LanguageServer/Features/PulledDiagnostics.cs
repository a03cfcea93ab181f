using System.Globalization;
using System.Text.Json;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Session;

namespace TechLint.LanguageServer.Features;

internal static class PulledDiagnostics
{
    public static DocumentDiagnosticReport Of(FeatureContext context, string? previous)
    {
        var found = context.Workspace.Check(context.Path, context.Cancellation);
        var shown = DiagnosticRendering.Render(found, context.Document, context.Encoding, context.OpenDocument);
        var id = IdOf(shown);
        return id == previous ? new DocumentDiagnosticReport("unchanged", id, null) : new DocumentDiagnosticReport("full", id, shown);
    }

    /// <summary>Says what a report holds: the same diagnostics have the same id, whenever they were made.</summary>
    public static string IdOf(Diagnostic[] shown)
    {
        var text = JsonSerializer.SerializeToUtf8Bytes(shown, ProtocolJson.Default.DiagnosticArray);
        return Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(text).AsSpan(0, 12));
    }
}
