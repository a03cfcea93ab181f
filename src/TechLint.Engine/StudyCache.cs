using System.Collections.Concurrent;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>
/// Studies by what they follow from: an edit that moves text, or changes what no computation rests on, finds its study here.
/// </summary>
internal sealed class StudyCache
{
    /// <summary>A session's worth of edits; a repository of thousands keeps its last ones.</summary>
    private const int Most = 512;

    private readonly ConcurrentDictionary<Examination, Study> studies = new();
    private readonly ConcurrentQueue<Examination> inOrder = new();

    public Study Of(Examination examination)
    {
        if (studies.TryGetValue(examination, out var known)) return known;
        var made = studies.GetOrAdd(examination, static inputs => new Study(inputs));
        inOrder.Enqueue(examination);
        while (studies.Count > Most && inOrder.TryDequeue(out var oldest)) studies.TryRemove(oldest, out _);
        return made;
    }
}
