using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Engine.Outlining;

public enum OutlineKind { Group, List, Item, Value }

/// <summary>A line of a document's outline.</summary>
/// <param name="Name">An entry's id, a key's title.</param>
public sealed record OutlineItem(string Name, string Detail, OutlineKind Kind, TextSpan Span, TextSpan NameSpan, ImmutableArray<OutlineItem> Children);

/// <summary>What a stretch of text is, for colour.</summary>
public enum TokenKind { Key, Word, Number, Name, Text, Comment, Rule }

public sealed record TextToken(TextSpan Span, TokenKind Kind, bool IsDefinition);
