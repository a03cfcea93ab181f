using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Engine;

/// <summary>The findings of one file.</summary>
/// <param name="Lowered">How many the settings lowered or switched off.</param>
internal sealed record FileCheck(ImmutableArray<CheckedFinding> Findings, int Lowered)
{
    /// <param name="rules">The technique rules to run: all of them but in a test of what happens when one fails.</param>
    public static FileCheck Of(
        Snapshot snapshot, string file, SeveritySettings severities, ImmutableArray<TechniqueRule> rules, CancellationToken cancellation)
    {
        var sink = new FindingSink(file);
        LinkedTechnique? linked = null;
        if (snapshot.TreeOf(file) is not { } tree)
        {
            sink.Report(RuleRegistry.EncodingUnreadable, default, "", Sentences.Unreadable(snapshot.FaultOf(file)));
        }
        else
        {
            var document = BoundDocument.Of(tree);
            ReportProblems(document, sink);
            linked = RunRules(snapshot, document, rules, sink, cancellation);
        }

        var lowered = 0;
        var found = sink.Findings.Select(finding => new CheckedFinding(finding, null, Baselined: false));
        if (linked is not null) found = WaiverDesk.Apply(sink.Findings, linked, snapshot.AsOf);
        var kept = ImmutableArray.CreateBuilder<CheckedFinding>();
        foreach (var one in found)
        {
            var rule = RuleRegistry.Find(one.Finding.Rule)!;
            var severity = severities.Of(rule, file);
            if (severity is null || severity < rule.Description.Severity) lowered++;
            if (severity is not { } stays) continue;

            // What its rule itself reported as milder stays so; settings that raise a rule raise it all.
            var milder = stays <= rule.Description.Severity && one.Finding.Severity < stays;
            kept.Add(milder ? one : one with { Finding = one.Finding with { Severity = stays } });
        }

        return new FileCheck(kept.ToImmutable(), lowered);
    }

    private static void ReportProblems(BoundDocument document, FindingSink sink)
    {
        foreach (var problem in document.Problems)
        {
            if (RuleRegistry.Find(problem.Code) is not ProblemRule rule) continue;
            sink.Report(rule, problem.Span, ModelPathLocator.At(document.Tree, problem.Span.Start), rule.Say(problem))
                .Fixes(rule.Mend(document.Tree.Source, problem));
        }
    }

    private static LinkedTechnique? RunRules(
        Snapshot snapshot, BoundDocument document, ImmutableArray<TechniqueRule> rules, FindingSink sink, CancellationToken cancellation)
    {
        switch (document.Kind)
        {
            case FormatKind.Technique when document.Tree.Root is not null:
                LinkedTechnique? linked = null;
                Guard(sink, "the binder", () => linked = snapshot.LinkedOf(document.Tree.Source.Path));
                if (linked is null) return null;
                var context = new TechniqueContext(linked, snapshot.StudyOf, snapshot.AsOf, sink);
                foreach (var rule in rules)
                {
                    cancellation.ThrowIfCancellationRequested();
                    Guard(sink, rule.Name, () => rule.Check(context));
                }

                return linked;
            case FormatKind.Equipment:
                foreach (var rule in RuleRegistry.OfLibraries) Guard(sink, rule.Name, () => rule.Check(document.Library, sink));
                return null;
            case FormatKind.Requirement:
                foreach (var rule in RuleRegistry.OfRequirementSets)
                {
                    Guard(sink, rule.Name, () => rule.Check(document.RequirementSet, id => TechniqueLinker.FindSet(id, snapshot), sink));
                }

                return null;
            case FormatKind.Settings:
                Guard(sink, RuleRegistry.BrokenSettings.Name, () => RuleRegistry.BrokenSettings.Check(
                    document.Settings, RuleRegistry.Names, id => TechniqueLinker.FindSet(id, snapshot), sink));
                return null;
            default:
                return null;
        }
    }

    /// <summary>One rule that throws is one finding; the others go on. What it threw is never shown: it may hold anything.</summary>
    private static void Guard(FindingSink sink, string name, Action work)
    {
        try
        {
            work();
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            sink.Report(RuleRegistry.InternalError, default, "", $"{name} failed, and what it would have found is not known")
                .With("kind", fault.GetType().Name);
        }
    }

    private static class Sentences
    {
        public static string Unreadable(LookupFault fault) => fault switch
        {
            LookupFault.NotFound => "the file does not exist any more",
            LookupFault.NotAFile => "a folder stands where a file belongs",
            LookupFault.TooLarge => "the file is too large to be read, and was not checked",
            LookupFault.NotText => "the file is no text in UTF-8 or UTF-16, and was not checked",
            LookupFault.OutsideWorkspace => "the file is a link that leads out of the workspace, and was not read",
            _ => "the file cannot be read, and was not checked",
        };
    }
}
