namespace TechLint.Model.Shape;

/// <summary>Finds the known name that an author most likely meant.</summary>
public static class NearestName
{
    /// <summary>
    /// The nearest name within one edit for up to four characters, else two (Damerau-Levenshtein: one edit inserts, drops, changes or swaps).
    /// Three would offer <c>outside-diameter</c> for <c>inside-diameter</c>. Failing that, the only name that has the text as one of its words.
    /// </summary>
    public static string? Of(string text, IEnumerable<string> names)
    {
        if (text.Length is 0 or > 80) return null;
        var candidates = names as IReadOnlyCollection<string> ?? [.. names];
        string? best = null;
        var least = text.Length <= 4 ? 2 : 3;
        foreach (var name in candidates)
        {
            if (Math.Abs(name.Length - text.Length) >= least) continue;
            var distance = Distance(text, name);
            if (distance >= least) continue;
            least = distance;
            best = name;
        }

        if (best is not null) return best;

        // {id: y, from 3} reads as a key "from 3": a forgotten colon.
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        if (space > 0 && candidates.Contains(text[..space], StringComparer.Ordinal)) return text[..space];
        var holders = candidates.Where(name => name.Split('-').Contains(text, StringComparer.Ordinal)).Take(2).ToArray();
        return holders.Length == 1 ? holders[0] : null;
    }

    /// <summary>Edits between two texts (optimal string alignment); small and capital letters count as equal.</summary>
    internal static int Distance(string left, string right)
    {
        var before = new int[right.Length + 1];
        var last = new int[right.Length + 1];
        var current = new int[right.Length + 1];
        for (var j = 0; j <= right.Length; j++) last[j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var cost = Same(left[i - 1], right[j - 1]) ? 0 : 1;
                var least = Math.Min(Math.Min(last[j] + 1, current[j - 1] + 1), last[j - 1] + cost);
                if (i > 1 && j > 1 && Same(left[i - 1], right[j - 2]) && Same(left[i - 2], right[j - 1])) least = Math.Min(least, before[j - 2] + 1);
                current[j] = least;
            }

            (before, last, current) = (last, current, before);
        }

        return last[right.Length];
    }

    private static bool Same(char left, char right) => char.ToLowerInvariant(left) == char.ToLowerInvariant(right);
}
