using TechLint.Engine.Actions;
using TechLint.LanguageServer.Protocol;
using TechLint.LanguageServer.Session;
using TechLint.Rules.Findings;
using TechLint.Syntax;
using TextEdit = TechLint.Rules.Findings.TextEdit;

namespace TechLint.LanguageServer.Features;

internal static class CodeActions
{
    public const string QuickFix = "quickfix";
    public const string Rewrite = "refactor.rewrite";
    public const string FixAll = "source.fixAll.techlint";

    public static CodeAction[] Of(FeatureContext context, CodeActionParams parameters)
    {
        var only = parameters.Context?.Only;
        var span = context.Span(parameters.Range);
        var actions = new List<CodeAction>();
        if (Wanted(only, QuickFix) || Wanted(only, FixAll))
        {
            var found = context.Workspace.Check(context.Path, context.Cancellation);
            if (Wanted(only, QuickFix))
            {
                foreach (var finding in found.Findings.Where(finding => Meets(finding.Span, span))) AddFixes(context, found, finding, actions);
            }

            if (Wanted(only, FixAll) && SafeEdits(found.Findings) is { Count: > 0 } edits && context.EditOf(edits) is { } all)
            {
                actions.Add(new CodeAction("Apply all safe fixes of techlint", FixAll, null, null, all));
            }
        }

        if (Wanted(only, Rewrite))
        {
            foreach (var fix in UnitActions.At(context.Snapshot, context.Path, span.Start))
            {
                if (context.EditOf(fix.Edits) is { } edit) actions.Add(new CodeAction(fix.Title, Rewrite, null, null, edit));
            }

            if (KeyOrderAction.Of(context.Snapshot, context.Path) is { } order && context.EditOf(order.Edits) is { } ordered)
            {
                actions.Add(new CodeAction(order.Title, Rewrite, null, null, ordered));
            }
        }

        return [.. actions];
    }

    private static void AddFixes(FeatureContext context, Workspaces.FileFindings found, Finding finding, List<CodeAction> actions)
    {
        var shown = DiagnosticRendering.Render(found with { Findings = [finding] }, context.Document, context.Encoding, context.OpenDocument);
        foreach (var fix in finding.Fixes) Add(fix, fix.Safe);
        if (MissingDefinition.For(context.Snapshot, finding) is { } definition) Add(definition, false);
        if (WaiverStub.For(context.Snapshot, finding) is { } waiver) Add(waiver, false);

        void Add(Fix fix, bool isPreferred)
        {
            if (context.EditOf(fix.Edits) is { } edit) actions.Add(new CodeAction(fix.Title, QuickFix, shown, isPreferred ? true : null, edit));
        }
    }

    /// <summary>The first safe fix of each finding; one that would touch what another changes waits for the next time.</summary>
    internal static List<TextEdit> SafeEdits(IEnumerable<Finding> findings)
    {
        var edits = new List<TextEdit>();
        foreach (var fix in findings.Select(finding => finding.Fixes.FirstOrDefault(fix => fix.Safe)).OfType<Fix>())
        {
            if (!fix.Edits.Any(edit => edits.Any(other => other.File == edit.File && Meets(other.Span, edit.Span)))) edits.AddRange(fix.Edits);
        }

        return edits;
    }

    /// <summary>A client that asks for a kind means those below it too.</summary>
    private static bool Wanted(string[]? only, string kind) =>
        only is null || only.Any(asked => asked is not null && (asked.Length == 0 || kind == asked || kind.StartsWith(asked + ".", StringComparison.Ordinal)));

    private static bool Meets(TextSpan one, TextSpan other) => one.Start <= other.End && other.Start <= one.End;
}
