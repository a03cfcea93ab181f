using TechLint.Syntax;

namespace TechLint.Engine.Navigating;

/// <summary>An item of a library in one line: what its author wrote of it, its own id left out.</summary>
internal static class Datasheet
{
    public static string Of(SyntaxTree tree, NameUse use) => GroupOf(tree, use) is { } group
        ? string.Join(", ", group.Entries.Where(entry => entry.Value is ScalarNode { IsMissing: false } && entry.Key.Value is not ("id" or "station"))
            .Take(4).Select(entry => $"{entry.Key.Value} {((ScalarNode)entry.Value).Value}"))
        : "";

    /// <summary>Every line of it, as Markdown.</summary>
    public static string Lines(SyntaxTree tree, NameUse use) => GroupOf(tree, use) is { } group
        ? string.Concat(group.Entries.Where(entry => entry.Key.Value is not "id" && entry.Value is not ErrorNode)
            .Select(entry => $"\n- {entry.Key.Value}: {OneLine(tree.Source.Slice(entry.Value.Span))}"))
        : "";

    private static MappingNode? GroupOf(SyntaxTree tree, NameUse use) => use.IsDefinition && use.Kind is not (NameKind.Technique or NameKind.Library or NameKind.RequirementSet)
        ? tree.PathTo(use.Span.Start).Select(step => step.Node).OfType<MappingNode>().LastOrDefault()
        : null;

    private static string OneLine(ReadOnlySpan<char> text)
    {
        var line = string.Join(' ', text.ToString().Split([' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
        return line.Length > 120 ? line[..119] + "…" : line;
    }
}
