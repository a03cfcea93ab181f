using System.Globalization;
using DiffPlex;
using DiffPlex.Chunkers;
using DiffPlex.Model;

namespace TechLint.Cli;

/// <summary>The difference of two texts in the unified form that <c>patch</c> takes. The library finds it; its own rendering miscounts last lines.</summary>
internal static class UnifiedDiff
{
    /// <summary>Lines kept about a change, as POSIX has it.</summary>
    private const int Context = 3;

    public static void Write(TextWriter output, string path, string before, string after)
    {
        var diff = Differ.Instance.CreateDiffs(before, after, ignoreWhiteSpace: false, ignoreCase: false, LineEndingsPreservingChunker.Instance);
        if (diff.DiffBlocks.Count == 0) return;
        output.Write($"--- {path}\n+++ {path}\n");
        for (var first = 0; first < diff.DiffBlocks.Count;)
        {
            var last = first;
            while (last + 1 < diff.DiffBlocks.Count && diff.DiffBlocks[last + 1].DeleteStartA - EndOf(diff.DiffBlocks[last]) <= 2 * Context) last++;
            WriteHunk(output, diff, first, last);
            first = last + 1;
        }
    }

    private static void WriteHunk(TextWriter output, DiffResult diff, int first, int last)
    {
        var (head, tail) = (diff.DiffBlocks[first], diff.DiffBlocks[last]);
        var lead = Math.Min(Context, head.DeleteStartA);
        var end = Math.Min(diff.PiecesOld.Count, EndOf(tail) + Context);
        var (oldStart, newStart) = (head.DeleteStartA - lead, head.InsertStartB - lead);
        var newEnd = tail.InsertStartB + tail.InsertCountB + end - EndOf(tail);
        output.Write(string.Create(
            CultureInfo.InvariantCulture, $"@@ -{Start(oldStart, end - oldStart)},{end - oldStart} +{Start(newStart, newEnd - newStart)},{newEnd - newStart} @@\n"));
        var at = oldStart;
        for (var index = first; index <= last; index++)
        {
            var block = diff.DiffBlocks[index];
            for (; at < block.DeleteStartA; at++) Line(output, ' ', diff.PiecesOld[at]);
            for (; at < EndOf(block); at++) Line(output, '-', diff.PiecesOld[at]);
            for (var added = 0; added < block.InsertCountB; added++) Line(output, '+', diff.PiecesNew[block.InsertStartB + added]);
        }

        for (; at < end; at++) Line(output, ' ', diff.PiecesOld[at]);
    }

    private static int EndOf(DiffBlock block) => block.DeleteStartA + block.DeleteCountA;

    /// <summary>Lines count from 1; an empty range names the line before it.</summary>
    private static int Start(int index, int count) => count == 0 ? index : index + 1;

    private static void Line(TextWriter output, char mark, string line)
    {
        output.Write(mark);
        output.Write(line);
        if (line is not [.., '\n' or '\r']) output.Write("\n\\ No newline at end of file\n");
    }
}
