using System.Text.Json.Nodes;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>Applies edits as a client does: positions in UTF-16, all of the original text, none over another.</summary>
internal static class ProtocolEdits
{
    public static string Apply(string text, JsonArray edits)
    {
        var starts = new List<int> { 0 };
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'))) starts.Add(i + 1);
        }

        var known = edits.Select(edit => (Start: Offset(edit!["range"]!["start"]!), End: Offset(edit["range"]!["end"]!), Text: (string)edit["newText"]!)).OrderBy(edit => edit.Start).ThenBy(edit => edit.End).ToList();
        for (var i = 1; i < known.Count; i++)
        {
            if (known[i].Start < known[i - 1].End) throw new InvalidOperationException("edits overlap");
        }

        for (var i = known.Count - 1; i >= 0; i--) text = string.Concat(text.AsSpan(0, known[i].Start), known[i].Text, text.AsSpan(known[i].End));
        return text;

        int Offset(JsonNode position) => starts[(int)position["line"]!] + (int)position["character"]!;
    }
}
