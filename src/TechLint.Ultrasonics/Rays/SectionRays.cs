namespace TechLint.Ultrasonics.Rays;

/// <summary>
/// Straight rays in the section across a weld, mirrored at its two surfaces: where a ray launched at an angle from the
/// local normal crosses a given depth in a given leg. One form serves the flat section and the curved one, scanned from
/// outside or inside. Angles in rad, lengths in mm; the advance is measured along the scanning surface (arc).
/// </summary>
/// <remarks>
/// Curved: a ray keeps its distance <c>b = Rs sin φ</c> from the pipe's axis over every bounce, so the local incidence at
/// radius r is <c>sin i = b / r</c>, a leg advances the polar angle by the difference of the incidences at its ends, and
/// its length is the difference of <c>sqrt(r² − b²)</c> there (law of sines; physics.md of the design gives the bore's case
/// <c>sin θi = (Ro/Ri) sin θ</c>).
/// </remarks>
internal readonly struct SectionRays
{
    private readonly double scanRadius;
    private readonly double oppositeRadius;

    private SectionRays(double thickness, double scanRadius, double oppositeRadius)
    {
        Thickness = thickness;
        this.scanRadius = scanRadius;
        this.oppositeRadius = oppositeRadius;
    }

    public double Thickness { get; }

    public bool IsCurved => scanRadius > 0;

    /// <summary>+1 when depth goes towards the axis (scanned from outside), −1 away from it, 0 when flat.</summary>
    public int Bend => !IsCurved ? 0 : scanRadius > oppositeRadius ? 1 : -1;

    /// <summary>Radius of the scanning surface; 0 when flat.</summary>
    public double ScanRadius => scanRadius;

    public static SectionRays Flat(double thickness) => new(thickness, 0, 0);

    public static SectionRays FromOutside(double thickness, double outsideDiameter) =>
        new(thickness, outsideDiameter / 2, (outsideDiameter / 2) - thickness);

    public static SectionRays FromInside(double thickness, double outsideDiameter) =>
        new(thickness, (outsideDiameter / 2) - thickness, outsideDiameter / 2);

    /// <summary>The greatest launch angle whose ray meets the opposite surface (exclusive); π/2 where every ray does.</summary>
    public double GreatestReachingAngle => Bend > 0 ? Math.Asin(oppositeRadius / scanRadius) : Math.PI / 2;

    /// <summary>Where a ray crosses a depth in a leg (1, 2, …; odd legs run from the scanning surface to the opposite one).</summary>
    /// <returns>False where it does not get there.</returns>
    public bool TryReach(double angle, double depth, int leg, out double advance, out double path)
    {
        if (!IsCurved)
        {
            var unfolded = (leg & 1) == 1 ? ((leg - 1) * Thickness) + depth : (leg * Thickness) - depth;
            advance = unfolded * Math.Tan(angle);
            path = unfolded / Math.Cos(angle);
            return angle < Math.PI / 2;
        }

        var sine = Math.Sin(angle);
        var axisDistance = scanRadius * sine;
        var radius = scanRadius - (Bend * depth);
        if (axisDistance > radius || (leg > 1 && axisDistance > oppositeRadius))
        {
            advance = path = double.NaN;
            return false;
        }

        var start = scanRadius * Math.Cos(angle);
        var partAngle = Math.Abs(Math.Asin(axisDistance / radius) - angle);
        var partPath = Math.Abs(start - Math.Sqrt((radius * radius) - (axisDistance * axisDistance)));
        if (leg > 1)
        {
            var legAngle = Math.Abs(Math.Asin(axisDistance / oppositeRadius) - angle);
            var legPath = Math.Abs(start - Math.Sqrt((oppositeRadius * oppositeRadius) - (axisDistance * axisDistance)));
            partAngle = (leg & 1) == 1 ? ((leg - 1) * legAngle) + partAngle : (leg * legAngle) - partAngle;
            partPath = (leg & 1) == 1 ? ((leg - 1) * legPath) + partPath : (leg * legPath) - partPath;
        }

        advance = scanRadius * partAngle;
        path = partPath;
        return true;
    }

    /// <summary>Incidence from the local normal at the end of a leg; NaN where the ray does not meet the opposite surface.</summary>
    public double IncidenceAtEndOf(double angle, int leg) =>
        !IsCurved || (leg & 1) == 0 ? angle : Math.Asin(scanRadius * Math.Sin(angle) / oppositeRadius);
}
