using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Tandem;

/// <summary>
/// What a tandem pair sees, in the pass's own frame (mm): a place is seen when the rear beam holds it in leg 2, bounced on a mirror, and the front
/// beam in leg 1, both within their pulse-echo -6 dB widths, when half the whole way lies in the recorded window, and when it
/// lies in the pair's zone. Which of the two probes transmits makes no difference.
/// </summary>
/// <remarks>
/// Inside both widths the two rays may differ a little in angle: the face that mirrors one into the other is then turned from upright by half the
/// difference. Faces ask for it through <see cref="TryFaceTilt"/>.
/// </remarks>
internal sealed class TandemSight : IPointSight
{
    private readonly PassSection section;
    private readonly SightLine rear;
    private readonly SightLine front;
    private readonly double pathFrom;
    private readonly double pathTo;

    /// <param name="section">Where.</param>
    /// <param name="rear">Serves in leg 2.</param>
    /// <param name="front">Serves in leg 1; both look the same way.</param>
    /// <param name="fromZ">Upper end of the zone, from the scanning surface.</param>
    /// <param name="toZ">Lower end.</param>
    public TandemSight(PassSection section, SightLine rear, SightLine front, double fromZ, double toZ)
    {
        this.section = section;
        this.rear = rear;
        this.front = front;
        pathFrom = (rear.PathFrom + front.PathFrom) / 2;
        pathTo = (rear.PathTo + front.PathTo) / 2;
        FromZ = fromZ;
        ToZ = toZ;
    }

    /// <summary>Beside the widths nothing bounds what is seen across the weld.</summary>
    public double FromY => double.NegativeInfinity;

    public double ToY => double.PositiveInfinity;

    public double FromZ { get; }

    public double ToZ { get; }

    public bool Sees(double y, double z) => z >= FromZ && z <= ToZ && Serves(y, z);

    /// <summary>As <see cref="Sees"/>, the zone left aside.</summary>
    public bool Serves(double y, double z) => TryFaceTilt(y, z, out _);

    /// <summary>
    /// Where the place is served: how a face through it must stand to mirror the rear ray into the front one, from upright (along the local normal), rad:
    /// half the difference of the rays' incidences there, positive where its lower end leans away from the probes.
    /// </summary>
    public bool TryFaceTilt(double y, double z, out double tilt)
    {
        tilt = double.NaN;
        var rays = section.Rays;
        if (!Holds(front, y, z, 1, out var frontLaunch, out var frontPath)) return false;
        if (!Holds(rear, y, z, 2, out var rearLaunch, out var rearPath)) return false;
        var half = (frontPath + rearPath) / 2;
        if (half < pathFrom || half > pathTo) return false;
        if (!rays.TryReach(Math.Abs(rearLaunch), rays.Thickness, 1, out var advance, out _)) return false;
        if (section.IsOnReinforcement(rear.ExitY + (rear.Direction * Math.CopySign(advance, rearLaunch)), 1)) return false;
        tilt = (IncidenceAt(frontLaunch, z) - IncidenceAt(rearLaunch, z)) / 2;
        return true;
    }

    private bool Holds(SightLine line, double y, double z, int leg, out double launch, out double path)
    {
        var rays = section.Rays;
        if (!LaunchTo.TryFind(rays, (y - line.ExitY) * line.Direction, z, leg, out launch, out path)) return false;
        var off = launch - line.Angle;
        return Math.Cos(off) > 0 && Math.Abs(path * Math.Sin(off)) <= line.Width.At(path * Math.Cos(off)) / 2;
    }

    /// <summary>A ray's angle from the local normal at a depth: <c>sin i = Rs sin φ / r</c>.</summary>
    private double IncidenceAt(double launch, double z)
    {
        var rays = section.Rays;
        return !rays.IsCurved ? launch : Math.Asin(rays.ScanRadius * Math.Sin(launch) / (rays.ScanRadius - (rays.Bend * z)));
    }
}
