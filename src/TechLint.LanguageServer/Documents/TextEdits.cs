using TechLint.LanguageServer.Protocol;
using TechLint.Syntax;

namespace TechLint.LanguageServer.Documents;

internal static class TextEdits
{
    /// <summary>The text after a client's changes, each of which speaks of the text that the one before it left.</summary>
    public static SourceText Apply(SourceText source, IEnumerable<ContentChange> changes, PositionEncoding encoding)
    {
        foreach (var change in changes)
        {
            var text = change.Text ?? "";
            if (change.Range is { Start: { } from, End: { } to })
            {
                var map = new PositionMap(source, encoding, markCounts: true);
                var (start, end) = (map.ToOffset(from), map.ToOffset(to));
                if (end < start) (start, end) = (end, start);
                text = string.Concat(source.Text.AsSpan(0, start), text, source.Text.AsSpan(end));
            }

            source = new SourceText(source.Path, text);
        }

        return source;
    }
}
