namespace TechLint.Ultrasonics.Imaging;

/// <summary>The path of least time from one element along a way to a point.</summary>
/// <param name="Angle">In the part where it enters, rad; towards the weld positive.</param>
/// <param name="Time">Through wedge and part, s.</param>
/// <param name="WedgePath">mm.</param>
/// <param name="ExitArc">From the sole's centre forward, mm.</param>
/// <param name="Directivity">Of the element.</param>
/// <param name="Arrival">In the part.</param>
internal readonly record struct LeastTime(double Angle, double Time, double WedgePath, double ExitArc, double Directivity, Arrival Arrival)
{
    /// <summary>
    /// Flatter rays do not count: towards grazing the sole lets ever less through, and surface waves go along, neither of which the model knows. Common
    /// practice: sweeps for welds end between 70 and 75 degrees.
    /// </summary>
    public const double FlattestAngle = 75 * Math.PI / 180;

    /// <summary>Halvings of the range of angles: down to the last bits.</summary>
    private const int Halvings = 60;

    /// <summary>A ray that passes the point by less than this (mm) meets it.</summary>
    private const double Meets = 1e-6;

    /// <summary>
    /// Null where no ray of this way connects the element with the point: shaded by the sole's edge, by reinforcement at a mirror, below the first
    /// critical angle, or beyond what an angle can be. The entry's place grows with the angle, and so does the advance of every leg: one ray at most.
    /// </summary>
    /// <param name="image">The image.</param>
    /// <param name="way">To or from the point.</param>
    /// <param name="critical">Least angle of the first leg.</param>
    /// <param name="element">The element.</param>
    /// <param name="y">Of the point, pass frame.</param>
    /// <param name="z">Of the point.</param>
    public static LeastTime? Of(ImageGeometry image, Way way, double critical, (double U, double Height) element, double y, double z)
    {
        var goal = image.Toward * y;
        var greatest = Math.Min(FlattestAngle, Math.Asin(way.GreatestSine));
        if (!(greatest > critical)) return null;
        var (low, high) = (critical, greatest);
        if (critical == 0 || ForwardAt(image, way, element, critical, z) > goal) (low, high) = (-greatest, critical == 0 ? greatest : -critical);
        if (ForwardAt(image, way, element, low, z) > goal || ForwardAt(image, way, element, high, z) < goal) return null;
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (ForwardAt(image, way, element, middle, z) < goal) low = middle;
            else high = middle;
        }

        var angle = (low + high) / 2;
        if (Math.Abs(angle) < critical || !ElementRay.TryAim(image, element, angle, way.FirstSpeed, out var ray) || !image.IsMirrored(way, angle, ray.ExitArc)) return null;
        var arrival = way.At(angle, z);
        if (!(Math.Abs(image.ForwardOf(ray.ExitArc, arrival.Advance) - goal) < Meets)) return null;
        return new LeastTime(angle, (ray.WedgePath / image.WedgeSpeed) + arrival.Time, ray.WedgePath, ray.ExitArc, ray.Directivity, arrival);
    }

    /// <summary>Where there is no ray it counts as far away on its own side, so that halving goes back to where there is one.</summary>
    private static double ForwardAt(ImageGeometry image, Way way, (double U, double Height) element, double angle, double z)
    {
        var forward = image.Sole.TryAim(element.U, element.Height, angle, way.FirstSpeed, out var ray)
            ? image.ForwardOf(ray.ExitArc, way.At(angle, z).Advance)
            : double.NaN;
        return double.IsNaN(forward) ? Math.CopySign(double.PositiveInfinity, angle) : forward;
    }
}
