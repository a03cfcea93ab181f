using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Faces;

/// <summary>A law as the faces need it: its sight line, and how much of a ray lies in the section.</summary>
/// <param name="Line">In the pass's own frame, over the step where the face lies beyond one.</param>
/// <param name="InSection">Cosine between a ray and its projection into the section, <c>sqrt(1 − sin²θ sin²δ)</c> with the skew δ; kept over every bounce.</param>
internal readonly record struct FaceLine(SightLine Line, double InSection);

/// <summary>A ray that is seen at a place: its direction there in the local axes (along the weld, along the surface, into the part), and its path.</summary>
internal readonly record struct SeenRay(double AlongWeld, double AlongSurface, double Inwards, double Path);

/// <summary>
/// The straight ray from a law's exit point through a place in a leg, mirrored at the wall's surfaces, and whether it is seen there: inside the beam's
/// pulse-echo -6 dB width, every bounce on a mirror. One form for flat and curved sections, scanned from outside or inside.
/// </summary>
/// <remarks>The launch φ solves advance(φ) = the place's: flat <c>tan φ = a / u</c>; curved by safeguarded Newton steps, the advance growing with φ.
/// At the place the ray makes the angle i with the local normal: flat i = φ, curved <c>sin i = Rs sin φ / r</c>.</remarks>
internal readonly struct FaceRays(SectionRays rays, MirrorGap? near, MirrorGap? far)
{
    private const int MostSteps = 60;

    /// <summary>Launches that agree to this are one, rad.</summary>
    private const double Settled = 1e-12;

    /// <summary>The ray found must end within this of the place, mm.</summary>
    private const double Met = 1e-6;

    /// <summary>Beyond this many widths from the axis, measured along the row, no ray of a beam is looked for.</summary>
    private const double FarOff = 4;

    /// <param name="law">The law.</param>
    /// <param name="leg">The leg.</param>
    /// <param name="y">The place along the scanning surface.</param>
    /// <param name="z">Its depth.</param>
    /// <param name="freeBounce">A bounce that needs no mirror of its own; 0 for none.</param>
    /// <param name="ray">What is seen.</param>
    public bool TrySee(FaceLine law, int leg, double y, double z, int freeBounce, out SeenRay ray)
    {
        ray = default;
        var line = law.Line;
        if (leg < line.StepLeg) return false;
        var target = (y - line.ExitY) * line.Direction;
        if (!TryLaunch(line, leg, target, z, out var launch, out var path)) return false;
        var off = launch - line.Angle;
        if (Math.Cos(off) <= 0 || Math.Abs(path * Math.Sin(off)) > line.Width.At(path * Math.Cos(off)) / 2) return false;
        for (var bounce = 1; bounce < leg; bounce++)
        {
            var isNear = (bounce & 1) == 0;
            if (bounce == freeBounce || (isNear ? near : far) is not { } gap) continue;
            var start = launch + line.TurnOfBounce(bounce);
            if (!rays.TryReach(Math.Abs(start), isNear ? 0 : rays.Thickness, bounce, out var advance, out _)) return false;
            var place = line.ExitOfBounce(bounce) + (line.Direction * Math.CopySign(advance, start));
            if (place > gap.From && place < gap.To) return false;
        }

        var sine = rays.IsCurved ? rays.ScanRadius * Math.Sin(launch) / (rays.ScanRadius - (rays.Bend * z)) : Math.Sin(launch);
        var cosine = Math.Sqrt(Math.Max(0, 1 - (sine * sine)));
        ray = new SeenRay(
            Math.Sqrt(Math.Max(0, 1 - (law.InSection * law.InSection))), law.InSection * line.Direction * sine,
            law.InSection * ((leg & 1) == 1 ? cosine : -cosine), path);
        return true;
    }

    private bool TryLaunch(SightLine line, int leg, double target, double z, out double launch, out double path)
    {
        launch = path = double.NaN;
        if (!rays.IsCurved)
        {
            var unfolded = (leg & 1) == 1 ? ((leg - 1) * rays.Thickness) + z : (leg * rays.Thickness) - z;
            if (!(unfolded > 0)) return false;
            launch = Math.Atan2(target, unfolded);
            path = Math.Sqrt((target * target) + (unfolded * unfolded));
            return true;
        }

        // A quick look from the axis: most laws are nowhere near.
        if (rays.TryReach(line.Angle, z, leg, out var onAxis, out var axisPath)
            && Math.Abs(target - onAxis) * Math.Cos(line.Angle) > FarOff * (line.Width.At(axisPath) + 1)) return false;
        var wanted = Math.Abs(target);
        var (low, high) = (0.0, GreatestLaunch(leg, z));
        var x = Math.Clamp(line.Angle, 0, high);
        for (var step = 0; step < MostSteps; step++)
        {
            if (!rays.TryReach(x, z, leg, out var advance, out path)) advance = double.PositiveInfinity;
            if (advance > wanted) high = x;
            else low = x;
            var next = x - ((advance - wanted) / SlopeAt(x, leg, z));
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (Math.Abs(next - x) < Settled) break;
            x = next;
        }

        if (!rays.TryReach(x, z, leg, out var found, out path) || Math.Abs(found - wanted) > Met) return false;
        launch = Math.CopySign(x, target);
        return true;
    }

    private double GreatestLaunch(int leg, double z) => rays.Bend < 0
        ? Math.PI / 2
        : Math.Asin(Math.Min(1, (leg > 1 ? rays.ScanRadius - rays.Thickness : rays.ScanRadius - z) / rays.ScanRadius));

    /// <summary>d advance / d launch: per radius r it is <c>Rs |Rs cos φ / sqrt(r² − Rs² sin² φ) − 1|</c>.</summary>
    private double SlopeAt(double launch, int leg, double z)
    {
        var scan = rays.ScanRadius;
        var (sine, cosine) = Math.SinCos(launch);
        double Of(double radius) => scan * Math.Abs((scan * cosine / Math.Sqrt(Math.Max(0, (radius * radius) - (scan * scan * sine * sine)))) - 1);
        var part = Of(scan - (rays.Bend * z));
        if (leg == 1) return part;
        var whole = Of(scan - (rays.Bend * rays.Thickness));
        return (leg & 1) == 1 ? ((leg - 1) * whole) + part : (leg * whole) - part;
    }
}
