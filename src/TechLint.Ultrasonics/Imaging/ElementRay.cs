namespace TechLint.Ultrasonics.Imaging;

/// <summary>The ray from one element that leaves the sole at an angle in the part, with what it is worth there.</summary>
/// <param name="ExitArc">From the sole's centre forward, along the scanning surface.</param>
/// <param name="WedgePath">mm.</param>
/// <param name="Directivity">Of the element towards it.</param>
internal readonly record struct ElementRay(double ExitArc, double WedgePath, double Directivity)
{
    /// <summary>
    /// False where no such ray leaves the sole. The element is a strip of its own size (pitch − gap) that radiates longitudinal waves into the
    /// wedge: <c>sin x / x</c>, <c>x = π a sin β / λw</c>, β from the array's normal (far field of a strip; main lobe only).
    /// </summary>
    public static bool TryAim(ImageGeometry image, (double U, double Height) element, double angle, double speed, out ElementRay ray)
    {
        ray = default;
        if (!image.Sole.TryAim(element.U, element.Height, angle, speed, out var way) || !(Math.Abs(way.ExitArc) <= image.Sole.HalfArc)) return false;
        ray = new ElementRay(way.ExitArc, way.WedgePath, DirectivityAt(image, way.Direction));
        return ray.Directivity > 0;
    }

    /// <summary>Towards a direction in the wedge, from the normal of the plane under the sole's centre.</summary>
    public static double DirectivityAt(ImageGeometry image, double direction)
    {
        var x = Math.PI * image.Probe.Transducer.ElementSize.Millimetres * image.Frequency / image.WedgeSpeed * Math.Sin(direction - image.Slope);
        return Tofd.Directivity.Pattern(Math.Abs(x), isRound: false);
    }
}
