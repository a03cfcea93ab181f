using System.Collections.Immutable;

namespace TechLint.Tests.Tools.Fixtures;

/// <summary>What stands behind a block's three back ticks: <c>diff file=floor.technique.yaml</c>.</summary>
/// <param name="Kind"><c>diff</c>, <c>yaml</c> or <c>hex</c>.</param>
internal sealed record BlockHead(string Kind, string File, string? Throwing)
{
    public static BlockHead Read(string rule, string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string? Value(string key) => words.FirstOrDefault(word => word.StartsWith(key + "=", StringComparison.Ordinal))?[(key.Length + 1)..];
        if (words is not [("diff" or "yaml" or "hex") and var kind, ..] || Value("file") is not { } file)
        {
            throw new FixtureException($"{rule}: a block starts with diff, yaml or hex and file=NAME, not with '{text}'");
        }

        return new BlockHead(kind, file, Value("throws"));
    }
}

/// <summary>Turns a block into a file.</summary>
internal static class FixtureBlock
{
    public static FixtureFile Read(BlockHead head, string[] lines, string? baseText) => head.Kind switch
    {
        "yaml" => Whole(head.File, lines),
        "hex" => Bytes(head.File, lines),
        _ => Changed(head.File, lines, baseText),
    };

    private static FixtureFile Whole(string file, string[] lines)
    {
        var marks = new MarkedText(file, shift: 0);
        var text = new List<string>();
        foreach (var line in lines)
        {
            if (!marks.Read(line, text.Count - 1)) text.Add(line);
        }

        return new FixtureFile(file, Join(text), null, marks.Expected);
    }

    private static FixtureFile Bytes(string file, string[] lines)
    {
        var marks = new MarkedText(file, shift: 0);
        var digits = string.Concat(lines.Where(line => !marks.Read(line, 0))).Replace(" ", "", StringComparison.Ordinal);
        return new FixtureFile(file, null, Convert.FromHexString(digits), marks.Expected);
    }

    /// <summary>Blank lines part the changes. Each must find its old lines in what is left of the base, and only once.</summary>
    private static FixtureFile Changed(string file, string[] lines, string? baseText)
    {
        var marks = new MarkedText(file, shift: 1);
        List<string> old = baseText is null ? [] : [.. baseText.TrimEnd('\n').Split('\n')];
        var text = new List<string>();
        var at = 0;
        foreach (var change in Changes(lines))
        {
            string[] before = [.. change.Where(line => line[0] is ' ' or '-').Select(line => line[1..])];
            var found = before.Length == 0 ? at : Find(file, old, at, before);
            text.AddRange(old[at..found]);
            foreach (var line in change)
            {
                if (line[0] == '#' && marks.Read(line, text.Count - 1)) continue;
                if (line[0] is ' ' or '+') text.Add(line[1..]);
                else if (line[0] != '-') throw new FixtureException($"{file}: '{line}' starts with no blank, + or -, and is no mark");
            }

            at = found + before.Length;
        }

        text.AddRange(old[at..]);
        return new FixtureFile(file, Join(text), null, marks.Expected);
    }

    private static IEnumerable<string[]> Changes(string[] lines)
    {
        for (var start = 0; start < lines.Length;)
        {
            var end = Array.IndexOf(lines, "", start);
            if (end < 0) end = lines.Length;
            if (end > start) yield return lines[start..end];
            start = end + 1;
        }
    }

    private static int Find(string file, List<string> old, int from, string[] wanted)
    {
        int[] places = [.. Enumerable.Range(from, Math.Max(0, old.Count - wanted.Length - from + 1)).Where(i => wanted.Index().All(line => old[i + line.Index] == line.Item))];
        return places.Length == 1 ? places[0] : throw new FixtureException($"{file}: '{wanted[0]}' stands {places.Length} times in the base; it must stand once");
    }

    private static string Join(List<string> lines) => string.Concat(lines.Select(line => line + "\n"));
}
