using TechLint.Syntax;

namespace TechLint.Engine.Hints;

/// <summary>A computed number beside the text that it follows from.</summary>
/// <param name="Offset">It stands behind this place.</param>
public sealed record ComputedHint(int Offset, string Text, string Tooltip);

/// <summary>A setup's id, where a line of its figures may stand.</summary>
public sealed record LensPlace(TextSpan Span, string Setup);
