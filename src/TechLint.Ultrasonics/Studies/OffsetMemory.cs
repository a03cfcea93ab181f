using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Studies;

/// <summary>What the searches for offsets of one examination share: its sections, and for each set of probes the moves that are known not to cover.</summary>
internal sealed class OffsetMemory(Examination examination)
{
    private readonly Dictionary<(int Pass, EquatableArray<int> Stations), RuledOutMoves> known = [];

    public SectionBuilder Sections { get; } = new(examination);

    public RuledOutMoves Of(int passIndex, IEnumerable<int> stations)
    {
        EquatableArray<int> key = [.. stations.Order()];
        if (!known.TryGetValue((passIndex, key), out var moves)) known.Add((passIndex, key), moves = new RuledOutMoves());
        return moves;
    }
}
