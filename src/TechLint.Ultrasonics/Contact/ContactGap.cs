using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Contact;

/// <summary>
/// The greatest gap between a wedge's sole and the surface under it, mm: the sagitta <c>R − sqrt(R² − (a/2)²)</c> of the surface less that of the sole, a the sole's extent in the curved
/// direction. Valid for a stiff sole at rest, up to chords as long as the circle is wide; what rock does is <see cref="Rocking"/>'s. Source: geometry; its 0.5 mm limit
/// in standards is a set's to say.
/// </summary>
public static class ContactGap
{
    /// <summary>
    /// Height of an arc over its chord, <c>R − sqrt(R² − (a/2)²)</c>. Where the chord is longer than the circle is wide the edge
    /// hangs free, and R is the least its gap can be.
    /// </summary>
    public static Length Sagitta(Length radius, Length chord) => new(Sagitta(radius.Millimetres, chord.Millimetres));

    /// <param name="curvature">How the part bends under the frame.</param>
    /// <param name="diameter">Of the scanning surface, convex or hollow alike; null where it is flat.</param>
    /// <param name="wedge">The wedge.</param>
    /// <remarks>
    /// In the direction in which the part is curved (across the weld the wedge's length, along it its width) the gap is the
    /// difference of the surface's sagitta and the sole's; a sole cut the other way adds its own sagitta there.
    /// </remarks>
    public static Length Of(Curvature curvature, Length? diameter, Wedge wedge)
    {
        var (length, width) = (wedge.Length.Millimetres, wedge.Width.Millimetres);
        var surface = curvature == Curvature.Flat || diameter is null ? double.PositiveInfinity : diameter.Value.Millimetres / 2;
        var cut = wedge.ContourDiameter is { } contour ? contour.Millimetres / 2 : double.PositiveInfinity;
        var cutAlong = wedge.ContourDirection == ContourDirection.AlongBeam;
        var bentAlong = curvature == Curvature.AcrossWeld;
        var alongBeam = Difference(bentAlong ? surface : double.PositiveInfinity, cutAlong ? cut : double.PositiveInfinity, length);
        var acrossBeam = Difference(bentAlong ? double.PositiveInfinity : surface, cutAlong ? double.PositiveInfinity : cut, width);
        return new Length(alongBeam + acrossBeam);
    }

    private static double Difference(double surface, double sole, double chord) => Math.Abs(Sagitta(surface, chord) - Sagitta(sole, chord));

    private static double Sagitta(double radius, double chord)
    {
        if (double.IsPositiveInfinity(radius)) return 0;
        var half = chord / 2;
        if (half >= radius) return radius;

        // a²/4 / (R + sqrt(…)) is the same without the loss of digits at large radii.
        return half * half / (radius + Math.Sqrt((radius * radius) - (half * half)));
    }
}
