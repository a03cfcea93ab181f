using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>
/// Something wrong with a text, found while reading or binding it. It is not yet a finding: the rule of the same name
/// as <see cref="Code"/> gives it its words and severity.
/// </summary>
/// <param name="Code">The name of the document rule, such as <c>yaml-syntax</c>.</param>
/// <param name="Span">The very characters.</param>
/// <param name="Arguments">What the rule's text needs, in an order that the rule knows.</param>
public sealed record Problem(string Code, TextSpan Span, ImmutableArray<string> Arguments)
{
    public static Problem Create(string code, TextSpan span, params ReadOnlySpan<string> arguments) => new(code, span, [.. arguments]);

    /// <summary>The argument at an index, or an empty text where the problem gives fewer.</summary>
    public string Argument(int index) => index < Arguments.Length ? Arguments[index] : "";
}
