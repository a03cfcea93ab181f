using System.Collections.Concurrent;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>
/// Studies by what they follow from: an edit that moves text, or changes what no computation rests on, finds its study here.
/// </summary>
internal sealed class StudyCache
{
    /// <summary>
    /// About 0.4 MB each when fully worked out (measured: 600 of the longest sample in 240 MB): what one works on, and no more memory than an editor
    /// may cost. A check of thousands uses each only while it looks at its file.
    /// </summary>
    private const int Most = 64;

    private readonly ConcurrentDictionary<Examination, Kept> studies = new();
    private readonly ConcurrentQueue<Examination> inOrder = new();

    public int Count => studies.Count;

    public Study Of(Examination examination)
    {
        if (studies.TryGetValue(examination, out var known))
        {
            known.WasAsked = true;
            return known.Study;
        }

        var made = new Kept(new Study(examination));
        var kept = studies.GetOrAdd(examination, made);
        if (!ReferenceEquals(kept, made)) return kept.Study;
        inOrder.Enqueue(examination);

        // The oldest goes, unless it was asked for since its last turn: an open document's study outlives a check of the whole workspace.
        for (var turns = 2 * Most; studies.Count > Most && turns > 0 && inOrder.TryDequeue(out var oldest); turns--)
        {
            if (turns > 1 && studies.TryGetValue(oldest, out var old) && old.WasAsked)
            {
                old.WasAsked = false;
                inOrder.Enqueue(oldest);
            }
            else
            {
                studies.TryRemove(oldest, out _);
            }
        }

        return kept.Study;
    }

    private sealed class Kept(Study study)
    {
        private volatile bool wasAsked;

        public Study Study => study;

        public bool WasAsked
        {
            get => wasAsked;
            set => wasAsked = value;
        }
    }
}
