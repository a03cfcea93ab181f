using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Model;

/// <summary>Texts for the shape tests.</summary>
internal static class ShapeText
{
    public static SyntaxTree Read(string text) => YamlReader.Read(new SourceText("test.yaml", text));

    /// <summary>Every problem of a text, the reader's too, as <c>code [its characters] argument | argument</c>.</summary>
    public static string[] Problems(string text, FormatKind kind)
    {
        var tree = Read(text);
        return [.. tree.Problems.Concat(ShapeChecker.Check(tree, kind).Problems)
            .Select(problem => $"{problem.Code} [{tree.Source.Slice(problem.Span)}] {string.Join(" | ", problem.Arguments)}")];
    }

    /// <summary>The same without arguments.</summary>
    public static string[] Places(string text, FormatKind kind) => [.. Problems(text, kind).Select(line => line[..(line.IndexOf(']', StringComparison.Ordinal) + 1)])];
}
