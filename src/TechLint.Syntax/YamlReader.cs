using System.Buffers;
using System.Collections.Immutable;

namespace TechLint.Syntax;

/// <summary>Reads a text into a tree. Never throws, whatever the text.</summary>
public static class YamlReader
{
    // What YAML 1.2 does not allow in a text (5.1, c-printable), lone surrogates apart.
    private static readonly SearchValues<char> Unprintable = SearchValues.Create(
        "\u0000\u0001\u0002\u0003\u0004\u0005\u0006\u0007\u0008\u000B\u000C\u000E\u000F\u0010\u0011\u0012\u0013\u0014\u0015\u0016\u0017"
        + "\u0018\u0019\u001A\u001B\u001C\u001D\u001E\u001F\u007F\uFFFE\uFFFF");

    public static SyntaxTree Read(SourceText source) => Read(source, Way.Best);

    /// <summary>How to read: tests hold the ways against each other.</summary>
    internal enum Way
    {
        /// <summary>In one pass, and recovering where that fails.</summary>
        Best,

        /// <summary>As if one pass had failed.</summary>
        Recovering,

        /// <summary>As if one pass had failed and the parser could not be asked again.</summary>
        Unaided,
    }

    internal static SyntaxTree Read(SourceText source, Way way)
    {
        var text = source.Text;
        var problems = new List<Problem>();
        if (FindTooLong(source) is { } tooLong) return new SyntaxTree(source, null, [tooLong], []);

        var start = text.Length > 0 && text[0] == '\uFEFF' ? 1 : 0;
        FindUnprintable(text, problems);
        Node? root;
        int end, failedAt = 0;
        if (way != Way.Best || !TryReadWhole(text, start, problems, out root, out end, out failedAt))
        {
            var said = problems.Count;
            (root, end) = Recover(text, start, problems, way == Way.Unaided);
            // The parser refused the text; silence would pass for soundness. (It also refuses an empty document behind dashes.)
            if (way == Way.Best && problems.Count == said && root is not null) problems.Add(Unreadable(text, failedAt));
        }

        if (root is not null) new References(problems).Visit(root);
        return new SyntaxTree(source, root, Order(source, problems), CommentFinder.Find(text, root, start, end));
    }

    private static bool TryReadWhole(string text, int start, List<Problem> problems, out Node? root, out int end, out int failedAt)
    {
        var said = problems.Count;
        var reading = EventReader.Read(text, start, text.Length, 0, ReadingLimits.Depth, ReadingLimits.Nodes, problems);
        (root, end, failedAt) = (reading.Root, text.Length, reading.FailedAt);
        switch (reading.Outcome)
        {
            case Outcome.Read:
                if (reading.NextDocument >= 0)
                {
                    end = reading.NextDocument;
                    problems.Add(SecondDocument(text, end));
                }

                return true;
            case Outcome.TooMany:
                problems.Add(Sentences.TooMany(new TextSpan(reading.FailedAt, 0)));
                end = reading.FailedAt;
                return true;
            default:
                problems.RemoveRange(said, problems.Count - said);
                return false;
        }
    }

    private static (Node? Root, int End) Recover(string text, int start, List<Problem> problems, bool isUnaided)
    {
        var document = DocumentBounds.Find(text, start);
        foreach (var stray in document.StrayDirectives)
        {
            if (problems.Count < ReadingLimits.Problems) problems.Add(Sentences.Syntax(stray.Start, stray.End, Sentences.BadDirective));
        }

        if (document.Next >= 0) problems.Add(SecondDocument(text, document.Next));
        var reader = new RecoveringReader(text, document.LineStart, document.End, problems, isUnaided);
        return (reader.ReadRoot(document.Start), document.Next >= 0 ? document.Next : text.Length);
    }

    private static Problem? FindTooLong(SourceText source)
    {
        var text = source.Text;
        if (text.Length > ReadingLimits.Length)
        {
            return Sentences.Limit(new TextSpan(0, Math.Min(1, text.Length)), "the length of a file", "4194304 characters");
        }

        if (text.Length <= ReadingLimits.LineLength) return null;
        var lines = source.Lines;
        for (var i = 0; i < lines.LineCount; i++)
        {
            if (lines.EndOf(i) - lines.StartOf(i) <= ReadingLimits.LineLength) continue;
            return Sentences.Limit(new TextSpan(lines.StartOf(i), 1), "the length of a line", "65536 characters");
        }

        return null;
    }

    private static void FindUnprintable(string text, List<Problem> problems)
    {
        for (var at = 0; at < text.Length && problems.Count < ReadingLimits.Problems;)
        {
            var next = text.AsSpan(at).IndexOfAny(Unprintable);
            if (next < 0) return;
            at += next + 1;
            problems.Add(Sentences.Syntax(at - 1, at, Sentences.BadCharacter));
        }
    }

    private static Problem SecondDocument(string text, int at)
    {
        var stop = Lexical.ContentEnd(text, at, Lexical.LineEnd(text, at, text.Length));
        if (Lexical.IsMarker(text, at, text.Length)) stop = at + 3;
        return Sentences.Syntax(at, stop, Sentences.SecondDocument);
    }

    private static Problem Unreadable(string text, int at)
    {
        at = Math.Clamp(at, 0, text.Length);
        var stop = Lexical.TrimEnd(text, at, Lexical.LineEnd(text, at, text.Length));
        return Sentences.Syntax(at, stop, Sentences.Unreadable);
    }

    private static ImmutableArray<Problem> Order(SourceText source, List<Problem> problems)
    {
        if (problems.Count == 0) return [];
        var isCut = problems.Count >= ReadingLimits.Problems;
        // A stable order: problems at one place stay as they were found.
        var ordered = problems.OrderBy(problem => problem.Span).Take(ReadingLimits.Problems).ToList();
        foreach (var limit in problems.Where(problem => string.Equals(problem.Code, Sentences.LimitCode, StringComparison.Ordinal)))
        {
            if (!ordered.Contains(limit)) ordered.Add(limit);
        }

        if (isCut) ordered.Add(Sentences.Limit(new TextSpan(source.Text.Length, 0), "problems in a file", "100 problems"));
        return [.. ordered];
    }
}
