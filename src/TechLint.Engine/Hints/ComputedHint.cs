using TechLint.Syntax;

namespace TechLint.Engine.Hints;

/// <summary>A computed number beside the text that it follows from.</summary>
/// <param name="Offset">It stands behind this place.</param>
public sealed record ComputedHint(int Offset, string Text, string Tooltip);

/// <summary>A line above a setup.</summary>
public sealed record ComputedLens(TextSpan Span, string Text);
