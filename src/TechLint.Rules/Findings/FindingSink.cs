using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Findings;

/// <summary>Takes the findings of one file.</summary>
public sealed class FindingSink(string file)
{
    private readonly List<FindingDraft> drafts = [];

    public string File { get; } = file;

    public FindingDraft Report(Rule rule, TextSpan span, string path, string message)
    {
        var draft = new FindingDraft(rule, File, span, path, message);
        drafts.Add(draft);
        return draft;
    }

    public FindingDraft Report<T>(Rule rule, Bound<T> place, string message) => Report(rule, place.Span, place.Path, message);

    public IEnumerable<Finding> Findings => drafts.Select(draft => draft.Build());
}

/// <summary>A finding in the making.</summary>
public sealed class FindingDraft(Rule rule, string file, TextSpan span, string path, string message)
{
    private readonly List<Evidence> evidence = [];
    private readonly List<string> detail = [];
    private readonly List<RelatedPlace> related = [];
    private readonly List<Fix> fixes = [];
    private Citation? requirement;
    private Severity severity = rule.Description.Severity;

    public FindingDraft With(string name, double value, string unit, int digits = 3)
    {
        evidence.Add(new Evidence(name, Digits.Rounded(value, digits), null, unit));
        return this;
    }

    public FindingDraft With(string name, decimal value, string unit)
    {
        evidence.Add(new Evidence(name, value, null, unit));
        return this;
    }

    public FindingDraft With(string name, string text)
    {
        evidence.Add(new Evidence(name, null, text, ""));
        return this;
    }

    public FindingDraft With(string name, Quantity quantity) => With(name, quantity.Value, quantity.Unit.Symbol);

    /// <summary>Milder than its rule, where what it found is.</summary>
    public FindingDraft As(Severity milder)
    {
        severity = milder;
        return this;
    }

    public FindingDraft Detail(string line)
    {
        detail.Add(line);
        return this;
    }

    public FindingDraft Under(Citation? citation)
    {
        requirement = citation;
        return this;
    }

    public FindingDraft Related(string otherFile, TextSpan otherSpan, string otherMessage)
    {
        related.Add(new RelatedPlace(otherFile, otherSpan, otherMessage));
        return this;
    }

    /// <summary>A change that mends it; unsafe where it changes the examination.</summary>
    public FindingDraft Fix(string title, bool safe, params ImmutableArray<TextEdit> edits)
    {
        fixes.Add(new Fix(title, safe, edits));
        return this;
    }

    public FindingDraft Fixes(IEnumerable<Fix> more)
    {
        fixes.AddRange(more);
        return this;
    }

    internal Finding Build() => new(
        rule.Name, severity, file, span, path, message, [.. evidence], [.. detail], requirement, [.. related], [.. fixes]);
}
