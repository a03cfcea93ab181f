using System.Collections.Immutable;
using TechLint.Model.Requirements;
using TechLint.Syntax;

namespace TechLint.Rules.Findings;

/// <summary>One thing wrong, as data. Nothing here depends on a front door.</summary>
/// <param name="Rule">The rule's name.</param>
/// <param name="File">Relative to the workspace root, forward slashes.</param>
/// <param name="Span">The very characters.</param>
/// <param name="At">Model path, such as <c>setups/seam/probes/1/index-offset</c>; empty for the whole file.</param>
/// <param name="Message">What is wrong in the part, in one sentence without a full stop.</param>
/// <param name="Evidence">The numbers it rests on.</param>
/// <param name="Detail">Lines for the reader below the message: where it is worst, what would mend it.</param>
/// <param name="Requirement">The limit's source; null where no limit is involved.</param>
public sealed record Finding(
    string Rule, Severity Severity, string File, TextSpan Span, string At, string Message, ImmutableArray<Evidence> Evidence,
    ImmutableArray<string> Detail, Citation? Requirement, ImmutableArray<RelatedPlace> Related, ImmutableArray<Fix> Fixes);

/// <summary>A number (already rounded for display, fixed digits) or a text, with its unit; an empty unit for counts and texts.</summary>
public sealed record Evidence(string Name, decimal? Number, string? Text, string Unit);

public sealed record RelatedPlace(string File, TextSpan Span, string Message);

/// <param name="Safe">It changes no examination: it may be applied with others unasked-for.</param>
public sealed record Fix(string Title, bool Safe, ImmutableArray<TextEdit> Edits);

/// <summary>Refers to the original text; edits of one fix never overlap.</summary>
public sealed record TextEdit(string File, TextSpan Span, string NewText);
