namespace TechLint.Syntax;

/// <summary>What is said about a broken text: whole sentences in the words of somebody who writes techniques.</summary>
internal static class Sentences
{
    public const string SyntaxCode = "yaml-syntax";
    public const string DuplicateCode = "duplicate-key";
    public const string LimitCode = "limit-reached";

    public const string SecondDocument = "A file holds one document; what follows this line is not read.";
    public const string BadCharacter = "This character cannot stand in YAML text.";
    public const string KeyNotText = "Only text can be a key.";
    public const string UnknownAnchor = "No anchor of this name stands before this alias.";
    public const string AliasInItself = "This alias stands inside the very node that it repeats.";
    public const string TabIndent = "A tab cannot indent YAML; use spaces.";
    public const string TooDeepIndent = "This line is indented deeper than the line above allows, whose value is already complete.";
    public const string TooShallowIndent = "This line is indented less than the lines beside it.";
    public const string NoColon = "A key must be followed by a colon and a space.";
    public const string NoSpaceAfterColon = "A space must follow the colon.";
    public const string DashAmongKeys = "A list item cannot stand among keys.";
    public const string NoDash = "Each item of this list must start with a dash and a space.";
    public const string SecondColon = "A value cannot hold a colon followed by a space; put it in quotes or start a new line.";
    public const string ListOnKeyLine = "A list of dashes must start on a line of its own.";
    public const string ReservedStart = "A value cannot start with this character; put it in quotes.";
    public const string UnclosedQuote = "This quotation mark is never closed.";
    public const string UnclosedBrace = "This brace is never closed.";
    public const string UnclosedBracket = "This bracket is never closed.";
    public const string BracketClosesBrace = "A bracket cannot close a brace.";
    public const string BraceClosesBracket = "A brace cannot close a bracket.";
    public const string TextAfterValue = "This text follows a value that is already complete.";
    public const string MissingComma = "A comma must stand before this.";
    public const string NothingBeforeComma = "Something is missing before this comma.";
    public const string BadEscape = "This quoted text holds an escape that YAML does not know.";
    public const string BadBlockHeader = "After | or > only +, - and one digit may stand on the line.";
    public const string BadBlockText = "The lines of this text block are not indented alike.";
    public const string BadDirective = "This directive must stand before a line of three dashes.";
    public const string Unreadable = "This cannot be read as YAML.";

    public static Problem Syntax(int start, int end, string sentence) =>
        Problem.Create(SyntaxCode, TextSpan.FromBounds(start, end), sentence);

    /// <summary>Arguments: which ceiling, its value with its unit.</summary>
    public static Problem Limit(TextSpan span, string ceiling, string value) => Problem.Create(LimitCode, span, ceiling, value);

    public static Problem TooDeep(TextSpan span) => Limit(span, "nesting", "64 levels");

    public static Problem TooMany(TextSpan span) => Limit(span, "nodes in a file", "250000 nodes");
}
