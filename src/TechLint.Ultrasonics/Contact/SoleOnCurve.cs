using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Contact;

/// <summary>A sole and a curved surface in the direction in which the surface bends: whether it fits, rocks or rests on its edges. mm and rad, in the wedge's own frame (z down).</summary>
/// <param name="Radius">Of the surface.</param>
/// <param name="Bend">+1 convex, −1 hollow.</param>
/// <param name="Cut">Radius of the sole; infinite where flat.</param>
/// <param name="Half">Half its chord.</param>
internal readonly record struct SoleOnCurve(double Radius, int Bend, double Cut, double Half)
{
    /// <summary>Radii that differ by less are one: drawn and cut to the digit they are stated with.</summary>
    private const double SameRadius = 1e-9;

    /// <summary>Null where the surface is flat in both directions.</summary>
    public static SoleOnCurve? Of(Curvature curvature, Length? diameter, bool isHollow, Wedge wedge)
    {
        if (curvature == Curvature.Flat || diameter is not { } across) return null;
        var along = curvature == Curvature.AcrossWeld;
        var isCutSo = wedge.ContourDirection == (along ? ContourDirection.AlongBeam : ContourDirection.AcrossBeam);
        var cut = isCutSo && wedge.ContourDiameter is { } contour ? contour.Millimetres / 2 : double.PositiveInfinity;
        return new SoleOnCurve(across.Millimetres / 2, isHollow ? -1 : 1, cut, (along ? wedge.Length : wedge.Width).Millimetres / 2);
    }

    public bool Fits => Math.Abs(Cut - Radius) <= SameRadius * Radius;

    private bool IsFlat => double.IsPositiveInfinity(Cut);

    /// <summary>Touches in the middle, and rocks there.</summary>
    private bool TouchesInTheMiddle => !Fits && (Bend > 0 ? Cut > Radius : Cut < Radius);

    private double HalfAngle => IsFlat ? 0 : Math.Asin(Half / Cut);

    /// <summary>rad, either way.</summary>
    public double FullRock
    {
        get
        {
            if (double.IsNaN(HalfAngle)) return double.NaN;
            if (!TouchesInTheMiddle) return 0;
            if (IsFlat) return Math.Atan(Half / Radius);
            var (sine, cosine) = Math.SinCos(HalfAngle);
            return Bend > 0
                ? Math.Atan((Cut - Radius) * sine / (Cut - ((Cut - Radius) * cosine)))
                : Math.Atan((Radius - Cut) * sine / (Cut + ((Radius - Cut) * cosine)));
        }
    }

    public Contour Sole => IsFlat ? Contour.Plane : Contour.Circle(0, Bend * Cut, Cut, Bend);

    /// <summary>The surface's axis in the wedge's frame, the contact at the sole's rear edge (−1), at rest (0) or at its front edge (+1).</summary>
    public (double X, double Z) Axis(int tilt)
    {
        if (!TouchesInTheMiddle)
        {
            // On both edges; how high they stand over the sole's middle, and how far the axis lies from their chord.
            var rise = IsFlat || Fits ? 0 : Cut - Math.Sqrt((Cut * Cut) - (Half * Half));
            return Fits ? (0, Bend * Radius) : (0, Bend * (rise + Math.Sqrt((Radius * Radius) - (Half * Half))));
        }

        if (IsFlat) return (tilt * Half, Radius);
        var (sine, cosine) = Math.SinCos(tilt * HalfAngle);
        return Bend > 0
            ? ((Cut - Radius) * sine, Cut - ((Cut - Radius) * cosine))
            : ((Cut - Radius) * sine, -Cut + ((Cut - Radius) * cosine));
    }
}
