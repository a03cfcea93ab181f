namespace TechLint.Engine.Files;

/// <summary>
/// Path patterns: <c>*</c> and <c>?</c> within one name, <c>[abc]</c> and <c>[!a-z]</c> for one character, <c>**</c> for any number of
/// folders. Time grows with pattern times path, whatever the pattern.
/// </summary>
public static class Glob
{
    public static bool IsPattern(string text) => text.AsSpan().ContainsAny('*', '?', '[');

    public static bool Matches(string pattern, string path)
    {
        var wanted = pattern.Split('/');
        var names = path.Split('/');
        // reached[j]: the patterns so far match the first j names.
        var reached = new bool[names.Length + 1];
        reached[0] = true;
        for (var i = 0; i < wanted.Length; i++)
        {
            var next = new bool[names.Length + 1];
            if (wanted[i] is "**")
            {
                // At the end it stands for the files below, not for the folder itself.
                var least = i == wanted.Length - 1 ? 1 : 0;
                var open = false;
                for (var j = 0; j <= names.Length; j++)
                {
                    if (j >= least) open |= reached[j - least];
                    next[j] = open;
                }
            }
            else
            {
                for (var j = 0; j < names.Length; j++) next[j + 1] = reached[j] && MatchesName(wanted[i], names[j]);
            }

            reached = next;
        }

        return reached[names.Length];
    }

    private static bool MatchesName(ReadOnlySpan<char> pattern, ReadOnlySpan<char> name)
    {
        int at = 0, index = 0, star = -1, mark = 0;
        while (index < name.Length)
        {
            if (at < pattern.Length && pattern[at] == '*')
            {
                star = at++;
                mark = index;
            }
            else if (at < pattern.Length && MatchesOne(pattern[at..], name[index], out var length))
            {
                at += length;
                index++;
            }
            else if (star >= 0)
            {
                // The last star takes one character more; earlier ones need never be tried again.
                at = star + 1;
                index = ++mark;
            }
            else
            {
                return false;
            }
        }

        while (at < pattern.Length && pattern[at] == '*') at++;
        return at == pattern.Length;
    }

    private static bool MatchesOne(ReadOnlySpan<char> pattern, char character, out int length)
    {
        length = 1;
        if (pattern[0] == '?') return true;
        if (pattern[0] != '[') return pattern[0] == character;
        var negated = pattern.Length > 1 && pattern[1] is '!' or '^';
        var start = negated ? 2 : 1;
        // A bracket right at the start stands for itself.
        var end = start + 1 < pattern.Length ? pattern[(start + 1)..].IndexOf(']') : -1;
        if (end < 0) return character == '[';
        end += start + 1;
        length = end + 1;
        var found = false;
        for (var i = start; i < end; i++)
        {
            if (i + 2 < end && pattern[i + 1] == '-')
            {
                found |= character >= pattern[i] && character <= pattern[i + 2];
                i += 2;
            }
            else
            {
                found |= character == pattern[i];
            }
        }

        return found != negated;
    }
}
