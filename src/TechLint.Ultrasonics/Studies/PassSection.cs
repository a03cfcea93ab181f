using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Studies;

/// <summary>One pass at one thickness and diameter: its section, and the weld's surfaces as seen in its own frame (mm).</summary>
internal sealed class PassSection
{
    private PassSection(Examination examination, Pass pass, double thickness, double? outsideDiameter, SectionRays rays)
    {
        Examination = examination;
        Pass = pass;
        Thickness = thickness;
        OutsideDiameter = outsideDiameter;
        Rays = rays;
    }

    public Examination Examination { get; }

    public Pass Pass { get; }

    public double Thickness { get; }

    public double? OutsideDiameter { get; }

    /// <summary>Flat for plates and girth welds.</summary>
    public SectionRays Rays { get; }

    public bool IsInside => Pass.ScanningSurface == Surface.Inside;

    /// <summary>Diameter of the surface under the probes, whichever way it bends; null when flat.</summary>
    public double? ScanningDiameter => OutsideDiameter is { } outside && Examination.Part.Curvature != Curvature.Flat
        ? IsInside ? outside - (2 * Thickness) : outside
        : null;

    /// <summary>Null where thickness and diameter make no wall.</summary>
    public static PassSection? Of(Examination examination, Pass pass, Length thickness, Length? outsideDiameter)
    {
        var wall = thickness.Millimetres;
        var outside = outsideDiameter?.Millimetres;
        if (!double.IsFinite(wall) || wall <= 0 || outside is { } diameter && !(diameter > 2 * wall)) return null;
        var curved = examination.Part.Curvature == Curvature.AcrossWeld && outside is not null && double.IsFinite(outside.Value);
        var rays = !curved ? SectionRays.Flat(wall)
            : pass.ScanningSurface == Surface.Inside ? SectionRays.FromInside(wall, outside!.Value)
            : SectionRays.FromOutside(wall, outside!.Value);
        return new PassSection(examination, pass, wall, outside is { } d && double.IsFinite(d) ? d : null, rays);
    }

    /// <summary>Speeds of the parent metal on a probe's side; the frame of a pass from inside is mirrored.</summary>
    public SoundSpeeds SpeedsOn(Side side) => side == Side.Left ^ IsInside ? Examination.Part.Left : Examination.Part.Right;

    /// <summary>A raised reinforcement on the scanning surface (even legs end there) or the opposite one (odd legs) holds this y.
    /// Its width lies along its own surface; y is an arc of the scanning one.</summary>
    public bool IsOnReinforcement(double y, int leg)
    {
        var near = (leg & 1) == 0;
        var metal = near ^ IsInside ? Examination.Weld.Cap : Examination.Weld.Root;
        if (metal is null || metal.IsFlush) return false;
        var along = near || !Rays.IsCurved ? y : y * (Rays.ScanRadius - (Rays.Bend * Thickness)) / Rays.ScanRadius;
        var centre = IsInside ? -metal.Centre.Millimetres : metal.Centre.Millimetres;
        return Math.Abs(along - centre) <= metal.Width.Millimetres / 2;
    }
}
