namespace TechLint.Ultrasonics.Rays;

/// <summary>
/// The section as a Cartesian plane: x across under y = 0, z down from the scanning surface there. Turns a place (y along
/// the scanning surface, z true depth) into a point, and tells at which angle a straight line from an exit point meets it. mm and rad.
/// </summary>
internal readonly struct SectionFrame(SectionRays section)
{
    /// <summary>Slack for points that lie on the opposite surface by rounding alone.</summary>
    private const double Slack = 1e-9;

    private readonly double radius = section.ScanRadius;
    private readonly int bend = section.Bend;
    private readonly double thickness = section.Thickness;

    public (double X, double Z) Place(double y, double z)
    {
        if (bend == 0) return (y, z);
        var (sine, cosine) = Math.SinCos(y / radius);
        var r = radius - (bend * z);
        return (r * sine, bend * (radius - (r * cosine)));
    }

    /// <summary>A straight line from an exit point to a place: its length, and its angle from the local normal (towards +y positive).</summary>
    /// <returns>False where the line does not run through the part.</returns>
    public bool TryLine(double exitY, double y, double z, out double length, out double angle)
    {
        if (bend == 0)
        {
            angle = Math.Atan2(y - exitY, z);
            length = Math.Sqrt(((y - exitY) * (y - exitY)) + (z * z));
            return z >= 0;
        }

        var (x, depth) = Place(y, z);
        var (exitX, exitDepth) = Place(exitY, 0);
        var (sine, cosine) = Math.SinCos(exitY / radius);
        var (dx, dz) = (x - exitX, depth - exitDepth);
        var along = (dx * cosine) + (dz * bend * sine);
        var down = (-dx * bend * sine) + (dz * cosine);
        angle = Math.Atan2(along, down);
        length = Math.Sqrt((dx * dx) + (dz * dz));
        if (down < -Slack) return false;
        if (bend < 0) return true;

        // From outside, the bore may stand in the way.
        var bore = radius - thickness;
        var axisDistance = radius * Math.Abs(Math.Sin(angle));
        return axisDistance >= bore
            || length <= (radius * Math.Cos(angle)) - Math.Sqrt((bore * bore) - (axisDistance * axisDistance)) + Slack;
    }
}
