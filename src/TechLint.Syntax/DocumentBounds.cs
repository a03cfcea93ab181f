using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>Where the first document of a text lies, told without reading it.</summary>
/// <param name="LineStart">The first line that belongs to it.</param>
/// <param name="Start">Where its content begins: behind <c>---</c>, if there is one.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Next">Where a second document begins; -1 where there is none.</param>
/// <param name="StrayDirectives">Lines that start with <c>%</c> without dashes below them.</param>
internal readonly record struct DocumentBounds(int LineStart, int Start, int End, int Next, ImmutableArray<TextSpan> StrayDirectives)
{
    public static DocumentBounds Find(string text, int start)
    {
        var directives = ImmutableArray.CreateBuilder<TextSpan>();
        int lineStart = start, contentStart = start;
        var hasContent = false;
        var hasDashes = false;
        for (var at = start; at <= text.Length;)
        {
            var stop = Lexical.LineEnd(text, at, text.Length);
            var first = Lexical.SkipBlanks(text, at, stop);
            if (Lexical.IsMarker(text, at, stop))
            {
                if (text[at] == '-' && !hasContent && !hasDashes)
                {
                    directives.Clear();
                    hasDashes = true;
                    lineStart = at;
                    contentStart = at + 3;
                    var rest = Lexical.SkipBlanks(text, contentStart, stop);
                    hasContent = rest < stop && text[rest] != '#';
                }
                else if (text[at] == '-')
                {
                    return new DocumentBounds(lineStart, contentStart, at, at, directives.ToImmutable());
                }
                else if (hasContent || hasDashes)
                {
                    return new DocumentBounds(lineStart, contentStart, at, AfterDots(text, stop), directives.ToImmutable());
                }
            }
            else if (first < stop && text[first] != '#')
            {
                if (text[at] == '%' && !hasContent && !hasDashes)
                {
                    directives.Add(TextSpan.FromBounds(at, Lexical.TrimEnd(text, at, stop)));
                    lineStart = contentStart = stop < text.Length ? Lexical.AfterBreak(text, stop, text.Length) : stop;
                }
                else
                {
                    hasContent = true;
                }
            }

            if (stop >= text.Length) break;
            at = Lexical.AfterBreak(text, stop, text.Length);
        }

        return new DocumentBounds(lineStart, contentStart, text.Length, -1, directives.ToImmutable());
    }

    private static int AfterDots(string text, int at)
    {
        at = Lexical.SkipSpace(text, at, text.Length);
        return at < text.Length ? at : -1;
    }
}
