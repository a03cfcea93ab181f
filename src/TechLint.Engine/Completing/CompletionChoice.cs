using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Engine.Completing;

public enum ChoiceKind { Key, Value, Unit, Name }

/// <summary>Something that may be written at a place.</summary>
/// <param name="Text">What is written, plain.</param>
/// <param name="Snippet">The same with tab stops in the manner of the protocol, where it helps; else null.</param>
/// <param name="Detail">A few words beside it.</param>
/// <param name="Documentation">Markdown, or empty.</param>
/// <param name="IsFirst">Required here: it comes before the others.</param>
public sealed record CompletionChoice(
    string Label, string Text, string? Snippet, ChoiceKind Kind, string Detail, string Documentation, bool IsFirst)
{
    /// <summary>What the author's letters are held against, where it is not the label.</summary>
    public string? Filter { get; init; }
}

/// <param name="Replaced">What a choice takes the place of.</param>
public sealed record CompletionChoices(TextSpan Replaced, ImmutableArray<CompletionChoice> Choices);
