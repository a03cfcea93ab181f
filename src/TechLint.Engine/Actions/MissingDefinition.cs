using TechLint.Engine.Navigating;
using TechLint.Model.Shape;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Engine.Actions;

/// <summary>
/// The beginning of a definition in a library for a name that leads nowhere. The format has no equipment written into a technique, so
/// there is nothing to move to the library: the name is there first.
/// </summary>
public static class MissingDefinition
{
    /// <summary>Null where there is no library to write to, or the name is no piece of equipment.</summary>
    public static Fix? For(Snapshot snapshot, Finding finding)
    {
        if (finding.Rule is not "unknown-reference" || snapshot.TreeOf(finding.File) is not { } tree) return null;
        var use = NameIndex.Of(tree).Uses.FirstOrDefault(one => one.Span == finding.Span || finding.Span.Contains(one.Span));
        if (use is null || ListOf(use.Kind) is not { } key) return null;
        foreach (var library in Navigator.LibrariesOf(snapshot, finding.File))
        {
            if (snapshot.TreeOf(library) is { Root: MappingNode root } target && Edit(target, root, key, use.Name) is { } edit)
            {
                return new Fix($"Begin {use.Name} in {library} (its data to be filled in)", Safe: false, [edit]);
            }
        }

        return null;
    }

    private static TextEdit? Edit(SyntaxTree library, MappingNode root, string list, string id)
    {
        var item = (FormatShapes.Of(FormatKind.Equipment).Find(list)?.Value as ListShape)?.Item as ObjectShape;
        var keys = item is null ? [] : ShapeWalk.Required(item, null).Where(key => key.Name is not "id").Select(key => $", {key.Name}: ");
        var entry = $"{{id: {id}{string.Concat(keys)}}}";
        var newline = library.Source.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var end = library.Source.Text.Length;
        return root.Find(list) switch
        {
            null => new TextEdit(library.Source.Path, new TextSpan(end, 0), $"{(end > 0 && library.Source.Text[end - 1] is not '\n' ? newline : "")}{list}:{newline}  - {entry}{newline}"),
            { Value: SequenceNode { IsFlow: false, Items: [.., var last] } items } =>
                new TextEdit(library.Source.Path, new TextSpan(last.Span.End, 0), newline + new string(' ', library.Source.Lines.Utf16Column(items.Span.Start)) + "- " + entry),
            _ => null,
        };
    }

    private static string? ListOf(NameKind kind) => kind switch
    {
        NameKind.Probe => "probes",
        NameKind.Wedge => "wedges",
        NameKind.Frame => "frames",
        NameKind.Instrument => "instruments",
        NameKind.Encoder => "encoders",
        NameKind.Material => "materials",
        NameKind.Block => "blocks",
        _ => null,
    };
}
