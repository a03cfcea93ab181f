using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>A comment, from its <c>#</c> to the end of its line.</summary>
public readonly record struct Comment(TextSpan Span);

/// <summary>The tree of one text, with everything that was wrong with it. Built by <see cref="YamlReader.Read"/>.</summary>
/// <param name="Source">The text.</param>
/// <param name="Root">The root node; null for a text without content.</param>
/// <param name="Problems">In order of their place.</param>
/// <param name="Comments">In order.</param>
public sealed record SyntaxTree(SourceText Source, Node? Root, ImmutableArray<Problem> Problems, ImmutableArray<Comment> Comments);
