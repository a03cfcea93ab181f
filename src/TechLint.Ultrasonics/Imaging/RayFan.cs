namespace TechLint.Ultrasonics.Imaging;

/// <summary>
/// The angles in the part at which rays along one way are traced for a map: half a degree apart, from the first critical angle (or straight down) to the
/// flattest ray that the way allows, backwards and forwards.
/// </summary>
internal sealed class RayFan
{
    /// <summary>Between neighbours, rad. At 70 degrees and 50 mm depth rays lie 4 mm apart, and straight lines between them are true to 0.02 mm.</summary>
    private const double Step = 0.5 * Math.PI / 180;

    private RayFan(double[] angles, bool[] joins)
    {
        Angles = angles;
        Joins = joins;
    }

    /// <summary>Rising.</summary>
    public double[] Angles { get; }

    /// <summary>Whether an angle and the next one belong together; false across the gap below the first critical angle.</summary>
    public bool[] Joins { get; }

    public static RayFan Of(Way way, double critical)
    {
        var greatest = Math.Min(LeastTime.FlattestAngle, Math.Asin(way.GreatestSine));
        if (!(greatest > critical)) return new RayFan([], []);
        var count = (int)Math.Ceiling((greatest - critical) / Step);
        var side = new double[count + 1];
        for (var index = 0; index <= count; index++) side[index] = critical + (index * (greatest - critical) / count);
        double[] angles = [.. side.Reverse().Select(angle => -angle).SkipLast(critical > 0 ? 0 : 1), .. side];
        var joins = new bool[angles.Length];
        for (var index = 0; index + 1 < angles.Length; index++) joins[index] = !(critical > 0 && angles[index] < 0 && angles[index + 1] > 0);
        return new RayFan(angles, joins);
    }

    /// <summary>
    /// The fan's rays from one element; null where there is none that leaves the sole and meets only mirrors. Across the gap under a flat sole on a curved
    /// surface rays are sent out in the wedge and looked up by their angle in the part: aiming each would halve an interval for every one of them.
    /// </summary>
    public ElementRay?[] From(ImageGeometry image, Way way, (double U, double Height) element)
    {
        var rays = image.Sole.HasGap ? AcrossGap(image, way, element) : Aimed(image, way, element);
        for (var index = 0; index < rays.Length; index++)
        {
            if (rays[index] is { } ray && !image.IsMirrored(way, Angles[index], ray.ExitArc)) rays[index] = null;
        }

        return rays;
    }

    private ElementRay?[] Aimed(ImageGeometry image, Way way, (double U, double Height) element)
    {
        var rays = new ElementRay?[Angles.Length];
        for (var index = 0; index < rays.Length; index++)
        {
            if (ElementRay.TryAim(image, element, Angles[index], way.FirstSpeed, out var ray)) rays[index] = ray;
        }

        return rays;
    }

    private ElementRay?[] AcrossGap(ImageGeometry image, Way way, (double U, double Height) element)
    {
        var rays = new ElementRay?[Angles.Length];
        var next = 0;
        (double Angle, ElementRay Ray)? before = null;
        for (var direction = -SteepestDirection; direction <= SteepestDirection && next < rays.Length; direction += Step / SentPerStep)
        {
            if (!image.Sole.TryCrossGap(element.U + (element.Height * Math.Tan(direction)), direction, way.FirstSpeed, out var sent)) continue;
            var ray = new ElementRay(sent.ExitArc, element.Height / Math.Cos(direction), ElementRay.DirectivityAt(image, direction));
            if (before is { } from && sent.PartAngle > from.Angle)
            {
                for (; next < rays.Length && Angles[next] <= sent.PartAngle; next++)
                {
                    if (Angles[next] < from.Angle) continue;
                    var share = (Angles[next] - from.Angle) / (sent.PartAngle - from.Angle);
                    var between = new ElementRay(
                        Between(from.Ray.ExitArc, ray.ExitArc, share), Between(from.Ray.WedgePath, ray.WedgePath, share),
                        Between(from.Ray.Directivity, ray.Directivity, share));
                    if (Math.Abs(between.ExitArc) <= image.Sole.HalfArc && between.Directivity > 0) rays[next] = between;
                }
            }

            before = (sent.PartAngle, ray);
        }

        return rays;
    }

    private static double Between(double from, double to, double share) => from + ((to - from) * share);

    /// <summary>The part spreads the wedge's angles: they are sent closer together.</summary>
    private const double SentPerStep = 2;

    /// <summary>As for aiming through a sole: no wedge sends sound flatter.</summary>
    private const double SteepestDirection = 1.5;
}
