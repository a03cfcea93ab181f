using TechLint.Ultrasonics.Examinations;

namespace TechLint.Tests.Validation.MonteCarlo;

/// <summary>
/// Whether a point is seen, worked out the plainest way from the examination's own inputs: nothing of the project's physics is called. The law's exit point is
/// found by halving until Snell's law holds, the ray to a point by shooting, circle by circle; widths by the formulas of the width model as documented. Arrays on
/// flat soles and flat sections, or on soles cut along the beam and curved sections; sectorial beams without focus or skew; one pass. mm, rad and mm/s.
/// </summary>
internal sealed class PlainSight
{
    /// <summary>sinc² falls to a half at 0.4429: both sides of the axis.</summary>
    private const double EchoWidth = 0.8859;

    /// <summary>Of the launch: to 2e-10 rad.</summary>
    private const int Halvings = 34;

    private readonly Examination examination;
    private readonly double thickness;
    private readonly double scan;
    private readonly double opposite;
    private readonly bool isInside;
    private readonly List<Law> laws = [];

    /// <param name="examination">Its only pass is looked at.</param>
    /// <param name="thickness">Wall.</param>
    /// <param name="outsideDiameter">Null for a flat section.</param>
    public PlainSight(Examination examination, double thickness, double? outsideDiameter)
    {
        this.examination = examination;
        this.thickness = thickness;
        isInside = examination.Passes[0].ScanningSurface == Surface.Inside;
        if (outsideDiameter is { } diameter) (scan, opposite) = isInside ? ((diameter / 2) - thickness, diameter / 2) : (diameter / 2, (diameter / 2) - thickness);
        foreach (var beam in examination.Passes[0].Beams)
        {
            var probe = examination.Passes[0].Probes.Single(one => one.Station == beam.From);
            var sweep = beam.Angles!.Value;
            for (var angle = sweep.From.Degrees; angle <= sweep.To.Degrees + 1e-9; angle += sweep.Step.Degrees) laws.Add(LawAt(probe, beam, angle * Math.PI / 180));
        }
    }

    private bool IsCurved => scan > 0;

    /// <summary>+1 where the surface bends away from the wedge (outside), −1 where it bends towards it.</summary>
    private int Away => isInside ? -1 : 1;

    /// <param name="y">Along the outer surface.</param>
    /// <param name="z">From the outer surface.</param>
    public bool Sees(double y, double z)
    {
        // In the pass's own frame: mirrored, and along its own surface, when scanned from inside.
        var ownY = !isInside ? y : IsCurved ? -y * scan / opposite : -y;
        var ownZ = isInside ? thickness - z : z;
        return laws.Any(law => law.Beam.Legs.Any(leg => Sees(law, leg, ownY, ownZ)));
    }

    private bool Sees(Law law, int leg, double y, double z)
    {
        var target = (y - law.ExitY) * law.Direction;
        var bounces = new double[leg];

        // The advance grows with the launch: the first launch that gets there or beyond, or dies on the way.
        double low = -Math.PI / 2, high = Math.PI / 2;
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            var arrives = Shoot(middle, leg, z, bounces, out var reached, out _);
            if (arrives ? reached < target : middle < 0) low = middle;
            else high = middle;
        }

        var launch = (low + high) / 2;
        if (!Shoot(launch, leg, z, bounces, out var advance, out var path) || Math.Abs(advance - target) > 1e-4) return false;
        if (law.Beam.PathWindow is { } window && (path < (window.From?.Millimetres ?? 0) || path > (window.To?.Millimetres ?? double.PositiveInfinity))) return false;
        var off = launch - law.Angle;
        if (Math.Abs(off) >= Math.PI / 2 || Math.Abs(path * Math.Sin(off)) > law.WidthAt(path * Math.Cos(off)) / 2) return false;
        for (var bounce = 1; bounce < leg; bounce++)
        {
            var isOnScanning = bounce % 2 == 0;
            var metal = isOnScanning != isInside ? examination.Weld.Cap : examination.Weld.Root;
            if (metal is null || metal.Height.Millimetres <= 0) continue;
            var place = law.ExitY + (law.Direction * bounces[bounce]);
            if (IsCurved && !isOnScanning) place *= opposite / scan;
            if (isInside) place = -place;
            if (Math.Abs(place - metal.Centre.Millimetres) < metal.Width.Millimetres / 2) return false;
        }

        return true;
    }

    /// <summary>Follows a straight ray from mirror to mirror until the depth is met in the leg.</summary>
    private bool Shoot(double launch, int leg, double z, double[] bounces, out double advance, out double path)
    {
        path = advance = 0;
        if (!IsCurved)
        {
            for (var now = 1; now <= leg; now++)
            {
                var down = now < leg ? thickness : leg % 2 == 1 ? z : thickness - z;
                advance += down * Math.Tan(launch);
                path += down / Math.Cos(launch);
                if (now < leg) bounces[now] = advance;
            }

            return Math.Cos(launch) > 1e-9;
        }

        // The law of sines in the triangle of axis and both ends of a leg.
        var (from, turned) = (scan, 0.0);
        var incidence = launch;
        for (var now = 1; now <= leg; now++)
        {
            var to = now == leg ? scan - (Away * z) : now % 2 == 1 ? opposite : scan;
            var sine = from * Math.Sin(incidence) / to;
            if (Math.Abs(sine) > 1) return false;
            var arriving = Math.Asin(sine);
            turned += Math.Abs(arriving - incidence) * Math.Sign(launch);
            path += Math.Abs((from * Math.Cos(incidence)) - (to * Math.Cos(arriving)));
            (from, incidence) = (to, arriving);
            advance = turned * scan;
            if (now < leg) bounces[now] = advance;
        }

        return true;
    }

    private Law LawAt(MountedProbe probe, Beam beam, double angle)
    {
        var (wedge, array) = (probe.Wedge, probe.Transducer);
        var speed = examination.Part.Left.Transverse!.Value.MillimetresPerSecond;
        var inWedge = wedge.Longitudinal!.Value.MillimetresPerSecond;
        var slope = wedge.ArraySlope!.Value.Radians;
        var (first, count) = (beam.Aperture!.Value.First, beam.Aperture.Value.Count);
        var towardsFront = (first - 1 + ((count - 1) / 2.0)) * array.Pitch.Millimetres;
        var behind = wedge.FirstElement!.Value.BehindFront.Millimetres - (towardsFront * Math.Cos(slope));
        var height = wedge.FirstElement.Value.Height.Millimetres + (towardsFront * Math.Sin(slope));
        var half = wedge.Length.Millimetres / 2;
        var wanted = Math.Asin(Math.Sin(angle) * inWedge / speed);
        double low = -0.9 * half, high = 3 * half;
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (IncidenceAt(middle, half - behind, height, out _, out _) < wanted) low = middle;
            else high = middle;
        }

        var exit = (low + high) / 2;
        IncidenceAt(exit, half - behind, height, out var direction, out var wedgePath);
        var halfArc = IsCurved ? scan * Math.Asin(half / scan) : half;
        var outward = probe.Side == Side.Left ? -1 : 1;
        var squeeze = Math.Cos(angle) / Math.Cos(wanted);
        return new Law(
            beam, outward * (probe.IndexOffset.Millimetres + halfArc - exit), -outward, angle,
            count * array.Pitch.Millimetres * Math.Cos(direction - slope) * squeeze, speed / array.Frequency.Hertz,
            wedgePath * inWedge / speed * squeeze * squeeze);
    }

    /// <summary>Angle from the surface's normal at a place (arc from under the sole's middle) of the line that comes from the aperture's centre.</summary>
    private double IncidenceAt(double arc, double u, double height, out double direction, out double path)
    {
        var polar = IsCurved ? arc / scan : 0;
        var (x, up) = IsCurved ? (scan * Math.Sin(polar), Away * scan * (Math.Cos(polar) - 1)) : (arc, 0.0);
        direction = Math.Atan2(x - u, height - up);
        path = Math.Sqrt(((x - u) * (x - u)) + ((height - up) * (height - up)));
        return direction + (Away * polar);
    }

    private sealed record Law(Beam Beam, double ExitY, int Direction, double Angle, double Aperture, double Wavelength, double Lead)
    {
        public double WidthAt(double path)
        {
            var near = Aperture * Aperture / (4 * Wavelength);
            var distance = path + Lead;
            var atNear = EchoWidth * Wavelength * near / Aperture;
            return distance >= near ? EchoWidth * Wavelength * distance / Aperture : Aperture + ((atNear - Aperture) * distance / near);
        }
    }
}
