using System.Globalization;
using System.Text;
using TechLint.Model.Shape;

namespace TechLint.Engine.Completing;

/// <summary>A key with what must stand behind it, a stop for each value (syntax of snippets: LSP 3.17).</summary>
internal static class KeySnippets
{
    public static string? Of(KeyShape key, bool isFlow, int indent)
    {
        var shapes = ShapeWalk.Alternatives(key.Value);
        if (shapes.Any(shape => shape is not (ObjectShape or ListShape or MapShape))) return null;
        var list = shapes.OfType<ListShape>().FirstOrDefault();
        var group = (list?.Item ?? shapes.FirstOrDefault()) as ObjectShape;
        var names = group is null ? [] : ShapeWalk.Required(group, null).Select(required => required.Name).ToArray();
        if (isFlow || (list is not null && group is null))
        {
            var inner = string.Join(", ", names.Select((name, i) => string.Create(CultureInfo.InvariantCulture, $"{name}: ${i + 1}")));
            return (list, group) switch
            {
                (null, _) => $"{key.Name}: {{{inner}$0\\}}",
                (_, null) => $"{key.Name}: [$0]",
                _ => $"{key.Name}: [{{{inner}$0\\}}]",
            };
        }

        var text = new StringBuilder(key.Name).Append(':');
        var margin = "\n" + new string(' ', indent + 2);
        if (names.Length == 0) return text.Append(margin).Append(list is null ? "$0" : "- $0").ToString();
        for (var i = 0; i < names.Length; i++)
        {
            text.Append(margin).Append(list is null ? "" : i == 0 ? "- " : "  ").Append(names[i]).Append(CultureInfo.InvariantCulture, $": ${i + 1}");
        }

        return text.ToString();
    }
}
