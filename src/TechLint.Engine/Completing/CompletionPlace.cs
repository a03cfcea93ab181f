using System.Collections.Immutable;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine.Completing;

/// <summary>What the caret stands in: found by reading the text again with a word of ours in the caret's place.</summary>
/// <param name="Replaced">From the start of what is being written to the caret.</param>
/// <param name="Written">What is being written.</param>
/// <param name="IsKey">A key belongs here; else a value.</param>
/// <param name="Shape">Of the group that the key joins, or of the value; null where the schema knows none.</param>
/// <param name="Key">The key whose value it is, where it is a value.</param>
/// <param name="Owner">The group that holds the caret, our own word left in it; null at the root of an empty text.</param>
/// <param name="Steps">The way to it in the text with our word.</param>
/// <param name="KeyPath">Kind of file and keys down to the value, as <see cref="Navigating.NameTable"/> has it.</param>
/// <param name="Indent">The column of the key, for what goes below it.</param>
/// <param name="Tree">Of the text with our word; of a long text only what is near the caret.</param>
internal sealed record CompletionPlace(
    TextSpan Replaced, string Written, bool IsKey, bool IsFlow, ValueShape? Shape, KeyShape? Key, MappingNode? Owner,
    ImmutableArray<TreeStep> Steps, string KeyPath, int Indent, SyntaxTree Tree)
{
    /// <summary>No key of the format and no id looks like it.</summary>
    public const string Marker = "zz0caret0zz";

    public static CompletionPlace? At(SourceText source, FormatKind kind, int offset)
    {
        var near = Nearby.Of(source, Math.Clamp(offset, 0, source.Text.Length));
        return Near(near.Source, kind, near.Offset) is { } place ? place with { Replaced = new TextSpan(place.Replaced.Start + near.Removed, place.Replaced.Length) } : null;
    }

    private static CompletionPlace? Near(SourceText source, FormatKind kind, int offset)
    {
        var lineStart = source.Lines.StartOf(source.Lines.LineOf(offset));
        var line = source.Text.AsSpan(lineStart, offset - lineStart);
        if (InComment(line)) return null;
        var bracket = OpenBrackets.At(source, offset);
        var start = lineStart + StartOfPiece(line, bracket != '\0');
        var piece = source.Text.AsSpan(start, offset - start);
        var colon = Colon(piece);
        var end = EndOfWord(source.Text, offset);
        if (colon >= 0)
        {
            var value = start + colon + 1;
            while (value < offset && source.Text[value] == ' ') value++;
            if (value < offset && source.Text[value] is '"' or '\'') value++;
            return Read(source, kind, value, offset, end, (source.Text[value - 1] == ':' ? " " : "") + Marker, false, bracket != '\0');
        }

        if (bracket == '[') return Read(source, kind, start, offset, end, Marker, false, true);
        var asKey = Read(source, kind, start, offset, end, Marker + ": 0", true, bracket != '\0');
        if (asKey?.Shape is ObjectShape or MapShape) return asKey;
        return bracket == '\0' ? Read(source, kind, start, offset, end, Marker, false, false) : asKey;
    }

    private static CompletionPlace? Read(SourceText source, FormatKind kind, int start, int offset, int end, string put, bool isKey, bool isFlow)
    {
        // A key that is complete already keeps its colon: ours would be a second one.
        if (isKey && end < source.Text.Length && source.Text[end] == ':') put = Marker;
        var text = string.Concat(source.Text.AsSpan(0, start), put, source.Text.AsSpan(Math.Max(end, offset)));
        var tree = YamlReader.Read(new SourceText(source.Path, text));
        var steps = tree.PathTo(start + put.IndexOf(Marker, StringComparison.Ordinal) + 1);
        if (steps.IsEmpty) return null;
        var shapes = ShapeWalk.Along(FormatShapes.Of(kind), steps);
        var count = isKey ? steps.Length - 1 : steps.Length;
        if (isKey && !(count > 0 && steps[^1].Entry is { } found && found.Key.Value.StartsWith(Marker, StringComparison.Ordinal))) return null;
        var owner = steps.Take(isKey ? count : count - 1).LastOrDefault(step => step.Node is MappingNode).Node as MappingNode;
        var (shape, key) = shapes[count - 1];
        var path = string.Join('/', steps.Take(count).Where(step => step.Entry is not null).Select(step => step.Entry!.Key.Value).Prepend(FormatShapes.NameOf(kind)));
        return new CompletionPlace(
            TextSpan.FromBounds(start, offset), source.Text[start..offset], isKey, isFlow, shape, key, owner, steps, path, source.Lines.Utf16Column(start), tree);
    }

    private static bool InComment(ReadOnlySpan<char> line)
    {
        var hash = line.LastIndexOf('#');
        return hash >= 0 && (hash == 0 || line[hash - 1] == ' ') && line[..hash].Count('"') % 2 == 0;
    }

    /// <summary>Behind the last comma or bracket on the line where brackets are open; behind indentation and dashes.</summary>
    private static int StartOfPiece(ReadOnlySpan<char> line, bool inBrackets)
    {
        var start = inBrackets ? line.LastIndexOfAny('{', '[', ',') + 1 : 0;
        while (start < line.Length && (line[start] == ' ' || (line[start] == '-' && start + 1 < line.Length && line[start + 1] == ' '))) start++;
        return start;
    }

    private static int Colon(ReadOnlySpan<char> piece)
    {
        for (var i = 0; i < piece.Length; i++)
        {
            if (piece[i] == ':' && (i + 1 == piece.Length || piece[i + 1] == ' ')) return i;
        }

        return -1;
    }

    private static int EndOfWord(string text, int offset)
    {
        while (offset < text.Length && (char.IsAsciiLetterOrDigit(text[offset]) || text[offset] is '-' or '.')) offset++;
        return offset;
    }
}
