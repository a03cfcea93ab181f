using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// The way from an element through the wedge's sole into the part, in the plane of incidence. Place u runs along the tangent plane
/// under the sole's centre, forward positive; heights count from the contact plane. mm and rad.
/// </summary>
/// <remarks>
/// Three kinds. On a flat section one plane interface. A contoured sole on a curved section: one curved interface of the scanning
/// surface's radius, exact by the law of sines in the triangle element, exit point, axis. A flat sole on a curved section: it
/// touches at its centre (convex) or its ends (concave), and the gap is taken as filled with couplant of water's speed: the ray is
/// refracted at the plane sole, runs through the gap and is refracted again at the tilted surface. In a gap much thinner than a
/// wavelength echoes run to and fro, which this ray picture leaves out: by the three-layer formula for plastic, water and steel the
/// surface's tilt then turns the beam up to 1.6 times as far (longitudinal waves at normal incidence, impedances 2.5, 1.5, 46).
/// </remarks>
internal readonly struct Sole
{
    private readonly double wedgeSpeed;
    private readonly double couplantSpeed;
    private readonly double radius;
    private readonly int bend;
    private readonly bool hasGap;
    private readonly double axisToSole;

    /// <param name="length">Of the wedge, along the beam.</param>
    /// <param name="isContoured">Cut along the beam.</param>
    /// <param name="section">What it stands on.</param>
    /// <param name="wedgeSpeed">Longitudinal, mm/s.</param>
    /// <param name="couplantSpeed">mm/s.</param>
    public Sole(double length, bool isContoured, SectionRays section, double wedgeSpeed, double couplantSpeed)
    {
        this.wedgeSpeed = wedgeSpeed;
        this.couplantSpeed = couplantSpeed;
        radius = section.ScanRadius;
        bend = section.Bend;
        Half = length / 2;
        hasGap = section.IsCurved && !isContoured;
        if (!section.IsCurved)
        {
            HalfArc = Half;
            axisToSole = 0;
            return;
        }

        var onSurface = Half / radius;
        var touchesAtCentre = hasGap && bend > 0;
        HalfArc = radius * (touchesAtCentre ? Math.Atan(onSurface) : Math.Asin(onSurface));
        axisToSole = hasGap && bend < 0 ? Math.Sqrt((radius * radius) - (Half * Half)) : radius;
    }

    public double Half { get; }

    /// <summary>The contour as a tracer takes it: what the sole is, what the surface under it is, and the speeds.</summary>
    public SoleTracer Tracer()
    {
        var plane = Contour.Plane;
        if (bend == 0) return new SoleTracer(plane, null, wedgeSpeed, couplantSpeed);
        var surface = Contour.Circle(0, bend * axisToSole, radius, bend);
        return hasGap ? new SoleTracer(plane, surface, wedgeSpeed, couplantSpeed) : new SoleTracer(surface, null, wedgeSpeed, couplantSpeed);
    }

    /// <summary>From the sole's centre to its front edge, along the surface; NaN where the wedge is wider than the pipe.</summary>
    public double HalfArc { get; }

    /// <summary>The ray that leaves an element and runs in the part at an angle from the local normal; false where there is none.</summary>
    public bool TryAim(double u, double height, double partAngle, double partSpeed, out SoleRay ray)
    {
        ray = default;
        var incidence = Refraction.Through(partAngle, partSpeed, wedgeSpeed);
        if (double.IsNaN(incidence) || !(height > 0)) return false;
        if (bend == 0)
        {
            ray = new SoleRay(incidence, incidence, u + (height * Math.Tan(incidence)), height / Math.Cos(incidence), Math.Cos(partAngle) / Math.Cos(incidence), partAngle);
            return true;
        }

        return hasGap ? TryAimAcrossGap(u, height, partAngle, partSpeed, out ray) : TryAimThroughContour(u, height, incidence, partAngle, out ray);
    }

    /// <summary>A flat sole on a curve lets the sound out at its plane and the surface bends it again.</summary>
    public bool HasGap => hasGap;

    /// <summary>As the rays of a field take it; none where the sole lies on the surface.</summary>
    public Fields.SoleGap Gap => hasGap ? new Fields.SoleGap(axisToSole, couplantSpeed) : default;

    /// <summary>The ray that leaves a flat sole's plane at u in a given direction, across the gap; false where it does not enter the part.</summary>
    public bool TryCrossGap(double u, double direction, double partSpeed, out SoleRay ray)
    {
        ray = default;
        var inGap = Refraction.Through(direction, wedgeSpeed, couplantSpeed);
        var sine = SineAfterGap(u, direction, partSpeed);
        var atSurface = Math.Asin(sine * couplantSpeed / partSpeed);
        var partAngle = Math.Asin(sine);
        if (double.IsNaN(inGap) || double.IsNaN(atSurface) || double.IsNaN(partAngle)) return false;
        var squeeze = Math.Cos(inGap) / Math.Cos(direction) * Math.Cos(partAngle) / Math.Cos(atSurface);
        ray = new SoleRay(direction, direction, radius * bend * (atSurface - inGap), 0, squeeze, partAngle);
        return true;
    }

    /// <summary>In the part, for another direction in the wedge that meets the surface at the same place; NaN where it does not enter.</summary>
    public double Refract(double direction, double exitArc, double partSpeed)
    {
        var tilt = bend == 0 ? 0 : bend * exitArc / radius;
        var angle = hasGap
            ? Refraction.Through(Refraction.Through(direction, wedgeSpeed, couplantSpeed) + tilt, couplantSpeed, partSpeed)
            : Refraction.Through(direction + tilt, wedgeSpeed, partSpeed);
        return Math.Abs(direction + (hasGap ? 0 : tilt)) < Math.PI / 2 ? angle : double.NaN;
    }

    private bool TryAimThroughContour(double u, double height, double incidence, double partAngle, out SoleRay ray)
    {
        ray = default;
        var fromAxis = radius + (bend * height);
        var distance = Math.Sqrt((u * u) + (fromAxis * fromAxis));
        var sine = radius * Math.Sin(incidence) / distance;
        if (fromAxis <= 0 || !(Math.Abs(sine) <= 1)) return false;
        var atElement = Math.Asin(sine);
        var polar = Math.Atan2(u, fromAxis) + (bend * (incidence - atElement));
        var path = bend * ((distance * Math.Cos(atElement)) - (radius * Math.Cos(incidence)));
        ray = new SoleRay(incidence, incidence - (bend * polar), radius * polar, path, Math.Cos(partAngle) / Math.Cos(incidence), partAngle);
        return path > 0;
    }

    private bool TryAimAcrossGap(double u, double height, double partAngle, double partSpeed, out SoleRay ray)
    {
        // The angle in the part grows with the direction in the wedge: halve the interval down to the last bits.
        var target = Math.Sin(partAngle);
        var (low, high) = (-SteepestDirection, SteepestDirection);
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (SineAfterGap(u + (height * Math.Tan(middle)), middle, partSpeed) < target) low = middle;
            else high = middle;
        }

        var direction = (low + high) / 2;
        if (!TryCrossGap(u + (height * Math.Tan(direction)), direction, partSpeed, out ray)) return false;
        ray = ray with { WedgePath = height / Math.Cos(direction), PartAngle = partAngle };
        return Math.Abs(SineAfterGap(u + (height * Math.Tan(direction)), direction, partSpeed) - target) < AimTolerance;
    }

    private double SineAfterGap(double u, double direction, double partSpeed)
    {
        var inGap = Refraction.Through(direction, wedgeSpeed, couplantSpeed);
        var polar = Math.Atan2(u, axisToSole);
        return partSpeed / couplantSpeed * Math.Sqrt((u * u) + (axisToSole * axisToSole)) * Math.Sin(inGap + (bend * polar)) / radius;
    }

    /// <summary>No wedge sends sound flatter than this.</summary>
    private const double SteepestDirection = 1.5;
    private const int Halvings = 56;
    private const double AimTolerance = 1e-9;
}

/// <param name="WedgeAngle">In the wedge, from the normal of the surface it leaves the wedge through.</param>
/// <param name="Direction">In the wedge, from the normal of the tangent plane under the sole's centre.</param>
/// <param name="ExitArc">Where it enters the part: from the sole's centre forward, along the scanning surface.</param>
/// <param name="WedgePath">Path in the wedge.</param>
/// <param name="Squeeze">How much narrower the beam is in the part, in the plane of incidence: cos θ / cos α.</param>
/// <param name="PartAngle">In the part, from the local normal.</param>
internal readonly record struct SoleRay(
    double WedgeAngle, double Direction, double ExitArc, double WedgePath, double Squeeze, double PartAngle);
