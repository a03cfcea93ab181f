using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Duals;

/// <summary>
/// One law of a dual probe: its two beams start at equal distances on both sides of the plane of incidence and lean towards it. Paths are those in that plane,
/// from the exit point, mm.
/// </summary>
/// <remarks>
/// At a path s the axes are <c>x0 − s tan γ</c> from the plane, x0 half the separation less what the wedge has brought them nearer; both axes meet
/// at <c>s = x0 / tan γ</c>. The plane counts as met by both beams where its distance across the beam, <c>|x0 − s tan γ| cos γ</c>, is within half the
/// width of one beam in that direction: the width model of <see cref="BeamWidth"/> for the element's side across (its echo -6 dB is one way's -3 dB, and
/// transmit × receive is then -6 dB), unfocused, with the wedge path in front as <c>(vw/v) cos²γ / cos²γw</c>. Grains of an austenitic weld, which bend both beams, are not
/// in it.
/// </remarks>
internal sealed class DualCrossing
{
    /// <summary>Steps along the path in search of the overlap's ends, which are then halved down.</summary>
    private const int Steps = 512;

    private const int Halvings = 40;

    private const string NoOverlap = "the halves' beams do not meet within the allowed legs";
    private const string NoCrossing = "the halves' axes do not cross in the part";

    private readonly double start;
    private readonly RoofTilt tilt;
    private readonly BeamWidth across;

    /// <param name="separation">Between the middles of the halves.</param>
    /// <param name="wedgePath">True path in the wedge.</param>
    /// <param name="tilt">How the beams lean.</param>
    /// <param name="side">Of the element across the plane of incidence; as a strip.</param>
    /// <param name="wavelength">In the part.</param>
    /// <param name="speedRatio">vw / v.</param>
    public DualCrossing(double separation, double wedgePath, RoofTilt tilt, double side, double wavelength, double speedRatio)
    {
        this.tilt = tilt;
        start = (separation / 2) - (wedgePath * Math.Sin(tilt.InWedge));
        var squeeze = Math.Cos(tilt.InPart) / Math.Cos(tilt.InWedge);
        across = new BeamWidth(side * squeeze, wavelength, wedgePath * speedRatio * squeeze * squeeze);
    }

    /// <summary>Path to where the axes cross; null where they do not in the part.</summary>
    public double? CrossingPath => start > 0 && tilt.InPart > 0 ? start / Math.Tan(tilt.InPart) : null;

    /// <summary>Whether both beams hold the plane between them at a path.</summary>
    public bool Overlaps(double path) => Excess(path) >= 0;

    /// <summary>The stretch of path about the crossing (or the first one, where the axes do not cross before the end) that both beams hold; null where there is none.</summary>
    public (double From, double To)? Overlap(double lastPath)
    {
        var middle = CrossingPath is { } crossing && crossing <= lastPath ? crossing : First(lastPath);
        if (middle is not { } held) return null;
        return (Edge(held, 0), Edge(held, lastPath));
    }

    /// <summary>What is shown of it.</summary>
    /// <param name="rays">The section.</param>
    /// <param name="angle">Of the law in the part, as the plane of incidence shows it.</param>
    /// <param name="overlap">Null for none.</param>
    public DualStudy Study(SectionRays rays, double angle, (double From, double To)? overlap)
    {
        Length? crossing = CrossingPath is { } path ? new Length(DepthAt(rays, angle, path)) : null;
        return new DualStudy(
            crossing, overlap is { } seen ? new Length(DepthAt(rays, angle, seen.From)) : null,
            overlap is { } held ? new Length(DepthAt(rays, angle, held.To)) : null, overlap is null ? NoOverlap : crossing is null ? NoCrossing : null);
    }

    /// <summary>Depth at a path, unfolded over the legs.</summary>
    internal static double DepthAt(SectionRays rays, double angle, double path)
    {
        if (!rays.IsCurved) return path * Math.Cos(angle);
        if (!rays.TryReach(angle, rays.Thickness, 1, out _, out var leg)) return WithinLeg(rays, angle, path);
        var legs = Math.Floor(path / leg);
        var rest = path - (legs * leg);
        return (legs * rays.Thickness) + (legs % 2 == 0
            ? WithinLeg(rays, angle, rest)
            : rays.Thickness - WithinLeg(rays, angle, leg - rest));
    }

    /// <summary>Triangle of axis, exit point and place: <c>r² = Rs² + s² ∓ 2 Rs s cos θ</c>.</summary>
    private static double WithinLeg(SectionRays rays, double angle, double path)
    {
        var radius = rays.ScanRadius;
        return Math.Abs(radius - Math.Sqrt((radius * radius) + (path * path) - (2 * rays.Bend * radius * path * Math.Cos(angle))));
    }

    private double Excess(double path)
    {
        var cosine = Math.Cos(tilt.InPart);
        return (across.At(path / cosine) / 2) - (Math.Abs(start - (path * Math.Tan(tilt.InPart))) * cosine);
    }

    private double? First(double lastPath)
    {
        for (var step = 0; step <= Steps; step++)
        {
            var path = step * lastPath / Steps;
            if (Overlaps(path)) return path;
        }

        return null;
    }

    private double Edge(double held, double end)
    {
        var last = held;
        for (var step = 1; step <= Steps; step++)
        {
            var next = held + (step * (end - held) / Steps);
            if (!Overlaps(next))
            {
                var (low, high) = (last, next);
                for (var halving = 0; halving < Halvings; halving++)
                {
                    var middle = (low + high) / 2;
                    if (Overlaps(middle)) low = middle;
                    else high = middle;
                }

                return low;
            }

            last = next;
        }

        return end;
    }
}
