using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The least-time ray from a point in the wedge through the interface to a place in the part, in the plane of incidence: Snell's law at the exit point (Fermat), by Newton's
/// method inside a bracket. The interface is the plane, the cylinder that a contoured sole is cut to, or (a flat sole on a curve) the plane sole, the couplant in the gap and the
/// cylinder one after the other, as <see cref="Beams.Sole"/> has them. Later legs are mirrored at the two surfaces: unfolded on a flat section, bounce by bounce on a curved
/// one. Place u (forward) and height as in <see cref="Beams.Sole"/>; mm, rad, mm/s.
/// </summary>
/// <remarks>
/// Across a gap, C the couplant's speed, q the place on the sole, a the sole's distance from the axis, b the bend: <c>sin g = C/vw sin α</c>, at the surface
/// <c>sin i = (a sin g + b q cos g)/R</c>, exit arc <c>b R (i − g)</c>, <c>sin θ = v/C sin i</c>. The gap bends and delays a ray; what it transmits is left to the thin film
/// of <see cref="SlipContact"/>: echoes to and fro in the film, which raise or lower a gap of about a quarter of the couplant's wavelength by some dB, are not followed.
/// </remarks>
/// <param name="section">What the sound runs in.</param>
/// <param name="wedgeSpeed">Longitudinal.</param>
/// <param name="partSpeed">Of the wave looked at.</param>
/// <param name="gap">A flat sole on a curve; none otherwise.</param>
internal readonly struct InterfaceRays(SectionRays section, double wedgeSpeed, double partSpeed, SoleGap gap = default)
{
    /// <summary>Nothing leaves an element flatter than this, rad: where the search across a gap begins.</summary>
    private const double Flattest = 1.45;

    /// <summary>A ray passes the place by less than this, mm: time errs by its square over the path.</summary>
    private const double Tolerance = 1e-6;
    private const int Iterations = 60;
    private const double SteepestSine = 1 - 1e-12;

    private readonly double radius = section.ScanRadius;
    private readonly int bend = section.Bend;
    private readonly double oppositeRadius = section.ScanRadius - (section.Bend * section.Thickness);

    /// <summary>The ray; false where none gets there.</summary>
    /// <param name="u">Source.</param>
    /// <param name="height">Source.</param>
    /// <param name="forward">The place, as an arc on the scanning surface from the sole's centre.</param>
    /// <param name="depth">Its depth.</param>
    /// <param name="leg">The leg it is met in.</param>
    /// <param name="start">A guess of the exit arc; NaN for none.</param>
    /// <param name="ray">The ray.</param>
    public bool TryFind(double u, double height, double forward, double depth, int leg, double start, out InterfaceRay ray)
    {
        ray = default;
        if (!(height > 0) || !TryBracket(u, height, depth, leg, out var low, out var high)) return false;
        var unfolded = (leg & 1) == 1 ? ((leg - 1) * section.Thickness) + depth : (leg * section.Thickness) - depth;
        var s = start > low && start < high ? start : Math.Clamp(u + ((forward - u) * height / (height + unfolded)), low, high);
        if (s == low || s == high) s = (low + high) / 2;
        var lastMiss = double.PositiveInfinity;
        for (var iteration = 0; iteration < Iterations; iteration++)
        {
            if (!TryFollow(u, height, s, depth, leg, out ray, out var reach, out var slope) && !gap.IsOpen) return false;
            var miss = reach - forward;
            if (Math.Abs(miss) < Tolerance) return true;
            if (miss > 0) high = s;
            else low = s;

            // Near the steepest ray Newton's steps are tiny: where one does not halve the miss, the bracket is halved.
            var next = s - (miss / slope);
            if (!(next > low && next < high) || !double.IsFinite(miss) || Math.Abs(miss) > lastMiss / 2) next = (low + high) / 2;
            lastMiss = Math.Abs(miss);
            s = next;
        }

        return false;
    }

    /// <summary>The ray that leaves the wedge at an exit arc.</summary>
    /// <param name="u">Source.</param>
    /// <param name="height">Source.</param>
    /// <param name="exit">Arc from the sole's centre.</param>
    /// <param name="depth">How deep it is followed.</param>
    /// <param name="leg">And in which leg.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="reach">Where it gets to that depth, as an arc from the sole's centre.</param>
    /// <param name="slope">d reach / d exit.</param>
    public bool TryFollow(double u, double height, double exit, double depth, int leg, out InterfaceRay ray, out double reach, out double slope)
    {
        ray = default;
        reach = slope = double.NaN;
        if (gap.IsOpen) return TryFollowGap(u, height, exit, depth, leg, out ray, out reach, out slope);
        double along, down;
        if (bend == 0)
        {
            (along, down) = (exit - u, height);
        }
        else
        {
            var (sine, cosine) = Math.SinCos(exit / radius);
            var (dx, dy) = ((radius * sine) - u, (radius * cosine) - radius - (bend * height));
            along = (dx * cosine) - (dy * sine);
            down = -bend * ((dx * sine) + (dy * cosine));
        }

        var wedgePath = Math.Sqrt((along * along) + (down * down));
        var sineIn = along / wedgePath;
        var cosineIn = down / wedgePath;
        var sinePart = sineIn * partSpeed / wedgeSpeed;
        if (!(cosineIn > 0) || !(Math.Abs(sinePart) < 1)) return false;
        var cosinePart = Math.Sqrt(1 - (sinePart * sinePart));
        if (!TryAdvance(sinePart, cosinePart, depth, leg, out var advance, out var growth, out var partPath, out var shrink)) return false;
        var turn = (cosineIn / wedgePath) + (bend == 0 ? 0 : bend / radius);
        reach = exit + advance;
        slope = 1 + (growth * partSpeed * cosineIn / (wedgeSpeed * cosinePart) * turn);

        // Width of the tube per radian at the source: where it enters, and at the place.
        var exitPerAngle = wedgePath / cosineIn;
        var tube = Math.Abs(slope) * exitPerAngle * shrink;
        ray = new InterfaceRay(
            exit, wedgePath, partPath, bend == 0 ? Math.Asin(sineIn) : Math.Asin(sineIn) - (bend * exit / radius), sinePart,
            Math.Sqrt(cosinePart / (cosineIn * tube)));
        return true;
    }

    /// <summary>The same across a gap; what is asked for is the place on the sole. Where no ray goes on, the reach is infinite, on the side where it is too steep.</summary>
    private bool TryFollowGap(double u, double height, double onSole, double depth, int leg, out InterfaceRay ray, out double reach, out double slope)
    {
        ray = default;
        slope = double.NaN;
        var along = onSole - u;
        var wedgePath = Math.Sqrt((along * along) + (height * height));
        var (sineIn, cosineIn) = (along / wedgePath, height / wedgePath);
        reach = along < 0 ? double.NegativeInfinity : double.PositiveInfinity;
        var sineGap = sineIn * gap.Speed / wedgeSpeed;
        if (!(Math.Abs(sineGap) < 1)) return false;
        var cosineGap = Math.Sqrt(1 - (sineGap * sineGap));
        var sineSurface = ((gap.ToAxis * sineGap) + (bend * onSole * cosineGap)) / radius;
        reach = sineSurface < 0 ? double.NegativeInfinity : double.PositiveInfinity;
        var sinePart = sineSurface * partSpeed / gap.Speed;
        if (!(Math.Abs(sinePart) < SteepestSine)) return false;
        var (cosineSurface, cosinePart) = (Math.Sqrt(1 - (sineSurface * sineSurface)), Math.Sqrt(1 - (sinePart * sinePart)));
        if (!TryAdvance(sinePart, cosinePart, depth, leg, out var advance, out var growth, out var partPath, out var shrink)) return false;
        var polar = bend * (Math.Asin(sineSurface) - Math.Asin(sineGap));
        var gapPath = bend * (gap.ToAxis - (radius * Math.Cos(polar))) / cosineGap;
        if (!(gapPath >= -Tolerance)) return false;

        // Growth with the place on the sole: of the angles in the gap, at the surface and in the part, and of the exit arc.
        var inGap = gap.Speed * cosineIn / (wedgeSpeed * cosineGap) * cosineIn / wedgePath;
        var atSurface = ((((gap.ToAxis * cosineGap) - (bend * onSole * sineGap)) * inGap) + (bend * cosineGap)) / (radius * cosineSurface);
        var inPart = partSpeed * cosineSurface / (gap.Speed * cosinePart) * atSurface;
        var exitGrowth = bend * radius * (atSurface - inGap);
        var exit = radius * polar;
        reach = exit + advance;
        slope = exitGrowth + (growth * inPart);
        var tube = Math.Abs(slope) * wedgePath / cosineIn * shrink;
        ray = new InterfaceRay(exit, wedgePath, partPath, Math.Asin(sineIn), sinePart, Math.Sqrt(Math.Abs(exitGrowth) * cosinePart / (cosineIn * tube)))
        {
            GapPath = Math.Max(0, gapPath), OnSole = onSole,
        };
        return true;
    }

    /// <summary>From the source to the place, s.</summary>
    public double TimeOf(in InterfaceRay ray) => (ray.WedgePath / wedgeSpeed) + (ray.PartPath / partSpeed) + (gap.IsOpen ? ray.GapPath / gap.Speed : 0);

    /// <summary>Advance along the scanning surface, its growth with the angle, the path, and how wide a step along the depth line lies across the ray.</summary>
    private bool TryAdvance(double sine, double cosine, double depth, int leg, out double advance, out double growth, out double path, out double shrink)
    {
        if (bend == 0)
        {
            var unfolded = (leg & 1) == 1 ? ((leg - 1) * section.Thickness) + depth : (leg * section.Thickness) - depth;
            advance = unfolded * sine / cosine;
            growth = unfolded / (cosine * cosine);
            path = unfolded / cosine;
            shrink = cosine;
            return true;
        }

        if (!section.TryReach(Math.Asin(Math.Abs(sine)), depth, leg, out advance, out path))
        {
            growth = shrink = double.NaN;
            return false;
        }

        var pointRadius = radius - (bend * depth);
        var axisDistance = radius * sine;
        var pointCosine = Math.Sqrt(1 - Math.Pow(axisDistance / pointRadius, 2));
        var toPoint = bend * ((radius * cosine / (pointRadius * pointCosine)) - 1);
        var polarGrowth = toPoint;
        if (leg > 1)
        {
            var wholeLeg = bend * ((radius * cosine / (oppositeRadius * Math.Sqrt(1 - Math.Pow(axisDistance / oppositeRadius, 2)))) - 1);
            polarGrowth = (leg & 1) == 1 ? ((leg - 1) * wholeLeg) + toPoint : (leg * wholeLeg) - toPoint;
        }

        if (sine < 0) advance = -advance;
        growth = radius * polarGrowth;
        shrink = pointCosine * pointRadius / radius;
        return pointCosine > 0;
    }

    /// <summary>The exit arcs of the steepest rays either way.</summary>
    private bool TryBracket(double u, double height, double depth, int leg, out double low, out double high)
    {
        low = high = double.NaN;
        if (gap.IsOpen)
        {
            (low, high) = (u - (height * Math.Tan(Flattest)), u + (height * Math.Tan(Flattest)));
            return true;
        }

        var greatest = Math.Min(1, wedgeSpeed / partSpeed);
        if (bend > 0) greatest = Math.Min(greatest, (leg > 1 ? oppositeRadius : radius - depth) / radius * wedgeSpeed / partSpeed);
        greatest *= SteepestSine;
        if (bend == 0)
        {
            var span = height * greatest / Math.Sqrt(1 - (greatest * greatest));
            (low, high) = (u - span, u + span);
            return true;
        }

        var fromAxis = radius + (bend * height);
        var distance = Math.Sqrt((u * u) + (fromAxis * fromAxis));
        if (!(fromAxis > 0)) return false;
        var incidence = Math.Asin(bend > 0 ? greatest : Math.Min(greatest, distance / radius * SteepestSine));
        var turn = bend * (incidence - Math.Asin(radius * Math.Sin(incidence) / distance));
        var under = Math.Atan2(u, fromAxis);
        (low, high) = (radius * (under - turn), radius * (under + turn));
        return turn > 0;
    }
}

/// <param name="Exit">Where it enters the part: arc from the sole's centre.</param>
/// <param name="WedgePath">mm.</param>
/// <param name="PartPath">mm.</param>
/// <param name="Direction">At the source, from the normal of the tangent plane under the sole's centre.</param>
/// <param name="PartSine">Sine of the angle in the part at the exit point.</param>
/// <param name="Spread">Amplitude at the place of a line source that has 1 at 1 mm, transmission left out: from the width of the ray tube.</param>
internal readonly record struct InterfaceRay(double Exit, double WedgePath, double PartPath, double Direction, double PartSine, double Spread)
{
    private readonly double? onSole;

    /// <summary>In the couplant under a flat sole on a curve, mm.</summary>
    public double GapPath { get; init; }

    /// <summary>Where it leaves the wedge: what a search for the next ray starts from.</summary>
    public double OnSole
    {
        get => onSole ?? Exit;
        init => onSole = value;
    }
}

/// <summary>The couplant between a flat sole and a curve.</summary>
/// <param name="ToAxis">From the plane of the sole to the axis of the curve, mm.</param>
/// <param name="Speed">In the couplant, mm/s; 0 for no gap.</param>
internal readonly record struct SoleGap(double ToAxis, double Speed)
{
    public bool IsOpen => Speed > 0;
}
