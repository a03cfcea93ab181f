namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// The depth that a pair covers on its mid-plane for one drop of transmit × receive from the loudest depth: between the dead zones, within the
/// recorded time. mm, and dB (negative).
/// </summary>
internal sealed class MidPlaneDepths
{
    private readonly PairGeometry pair;
    private readonly MidPlaneLevel level;
    private readonly double wall;
    private readonly double nearDead;
    private readonly double backDead;
    private readonly double earliest;
    private readonly double latest;
    private readonly double peak;
    private readonly double peakDepth;

    public MidPlaneDepths(
        PairGeometry pair, MidPlaneLevel level, double wall, double intersection, double nearDead, double backDead, double earliest, double latest)
    {
        this.pair = pair;
        this.level = level;
        this.wall = wall;
        this.nearDead = nearDead;
        this.backDead = backDead;
        this.earliest = earliest;
        this.latest = latest;
        (peak, peakDepth) = level.Loudest(wall, intersection);
    }

    public double LeastLevel(double drop) => peak * Math.Pow(10, drop / 20);

    /// <summary>Both ends equal where nothing is covered.</summary>
    public (double From, double To) Covered(double drop)
    {
        var least = LeastLevel(drop);
        var from = Math.Max(Math.Max(nearDead, level.Edge(peakDepth, 0, least)), earliest <= pair.Separation ? 0 : pair.DepthOf(earliest));
        var to = Math.Min(Math.Min(wall - backDead, level.Edge(peakDepth, wall, least)), pair.DepthOf(latest));
        return (from, to > from ? to : from);
    }
}
