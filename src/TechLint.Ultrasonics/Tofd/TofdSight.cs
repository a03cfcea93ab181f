using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// What a diffraction pair sees, in the pass's own frame (mm): a point is seen when its echo arrives a pulse after the
/// lateral wave and before the back wall's dead zone, within the recorded window, when transmit × receive stays above the drop, and
/// when it lies in the pair's zone.
/// </summary>
/// <remarks>Signals are told from the back wall on the pair's mid-plane: an echo counts up to the time of the point that lies
/// the dead zone above the back wall there (EN 583-6 form).</remarks>
internal sealed class TofdSight : IPointSight
{
    private readonly PairGeometry pair;
    private readonly SectionFrame frame;
    private readonly Directivity transmit;
    private readonly Directivity receive;
    private readonly double earliest;
    private readonly double latest;
    private readonly double leastLevel;

    /// <param name="pair">Where the pair's beams enter.</param>
    /// <param name="transmit">Directivity of the transmitting probe.</param>
    /// <param name="receive">Directivity of the receiving probe.</param>
    /// <param name="earliest">First path (transmit + receive, mm) that counts.</param>
    /// <param name="latest">Last one.</param>
    /// <param name="leastLevel">Least product of the directivities.</param>
    /// <param name="fromZ">Upper end of the zone, from the scanning surface.</param>
    /// <param name="toZ">Lower end.</param>
    public TofdSight(
        PairGeometry pair, Directivity transmit, Directivity receive, double earliest, double latest, double leastLevel, double fromZ, double toZ)
    {
        this.pair = pair;
        frame = new SectionFrame(pair.Section);
        this.transmit = transmit;
        this.receive = receive;
        this.earliest = earliest;
        this.latest = latest;
        this.leastLevel = leastLevel;
        FromZ = fromZ;
        ToZ = toZ;
    }

    /// <summary>Nothing outside these places is seen: between the exit points, within the zone.</summary>
    public double FromY => pair.LeftExitY;

    public double ToY => pair.RightExitY;

    public double FromZ { get; }

    public double ToZ { get; }

    public bool Sees(double y, double z)
    {
        if (!(z >= FromZ && z <= ToZ && y >= FromY && y <= ToY)) return false;
        if (!frame.TryLine(pair.LeftExitY, y, z, out var leftPath, out var leftAngle)
            || !frame.TryLine(pair.RightExitY, y, z, out var rightPath, out var rightAngle)) return false;
        var path = leftPath + rightPath;
        if (path < earliest || path > latest || !pair.IsBelowChord(y, z)) return false;
        var (transmitAngle, receiveAngle) = pair.TransmitsFromLeft ? (leftAngle, -rightAngle) : (-rightAngle, leftAngle);
        return transmit.At(transmitAngle) * receive.At(receiveAngle) >= leastLevel;
    }
}
