namespace TechLint.Cli;

/// <summary>Known names close to a mistyped one.</summary>
internal static class Nearest
{
    /// <summary>The closest first, at most three; none where nothing is close.</summary>
    public static List<string> Of(string typed, IEnumerable<string> known)
    {
        var reach = Math.Max(2, typed.Length / 3);
        return
        [
            .. known.Distinct(StringComparer.Ordinal)
                .Select(name => (Name: name, Distance: Distance(typed, name)))
                .Where(one => one.Distance <= reach)
                .OrderBy(one => one.Distance).ThenBy(one => one.Name, StringComparer.Ordinal)
                .Take(3).Select(one => one.Name),
        ];
    }

    /// <summary>Such as <c>; did you mean 'check'?</c>, or nothing.</summary>
    public static string Suggestion(string typed, IEnumerable<string> known)
    {
        var near = Of(typed, known);
        return near.Count == 0 ? "" : $"; did you mean {string.Join(" or ", near.Select(name => $"'{name}'"))}?";
    }

    // Insertions, deletions, replacements, and two neighbours swapped, each once (optimal string alignment).
    private static int Distance(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 40) return int.MaxValue;
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                var best = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) best = Math.Min(best, rows[i - 2, j - 2] + 1);
                rows[i, j] = best;
            }
        }

        return rows[a.Length, b.Length];
    }
}
