namespace TechLint.Ultrasonics.Coverage;

/// <summary>Moves of a set of probes that are known not to cover at some case: who searches over that case needs not try them again. Only ever saves
/// work: what it knows is what trying would give.</summary>
internal sealed class RuledOutMoves
{
    private readonly List<(CoverageCase Place, double From, double To)> stretches = [];

    public void Add(CoverageCase place, double from, double to) => stretches.Add((place, from, to));

    public bool Holds(double move, HashSet<CoverageCase> cases)
    {
        foreach (var (place, from, to) in stretches)
        {
            if (move >= from && move <= to && cases.Contains(place)) return true;
        }

        return false;
    }
}
