namespace TechLint.Syntax.Formatting;

internal enum TokenKind
{
    Scalar, Alias, Property, Comment, Marker, Dash, Question, Colon, Comma, Open, Close,
}

/// <summary>One piece of a text between white space.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Span">Where it stands.</param>
/// <param name="Base">The token whose column its own follows from where it is the first of its line; -1 for the left margin.</param>
/// <param name="Indent">Columns right of that.</param>
/// <param name="Owner">For scalars: the token of the block that they belong to; their further lines move with it. -1 for none.</param>
/// <param name="IsBlockText">A literal or folded text, whose white space is its own.</param>
internal readonly record struct Token(TokenKind Kind, TextSpan Span, int Base, int Indent, int Owner = -1, bool IsBlockText = false);
