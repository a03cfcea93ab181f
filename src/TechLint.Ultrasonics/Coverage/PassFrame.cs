using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// A pass's own frame against the common one of the outer surface. From inside: y → −y, z → t − z, and on a curved section
/// an arc on the inner surface counts by the ratio of the radii on the outer one.
/// </summary>
internal readonly struct PassFrame
{
    private readonly bool isInside;
    private readonly double radii;

    public PassFrame(double thickness, double? outsideDiameter, Surface scanningSurface)
    {
        isInside = scanningSurface == Surface.Inside;
        radii = outsideDiameter is { } diameter ? (diameter / 2) / ((diameter / 2) - thickness) : 1;
        Rays = outsideDiameter is not { } curved ? SectionRays.Flat(thickness)
            : isInside ? SectionRays.FromInside(thickness, curved)
            : SectionRays.FromOutside(thickness, curved);
        ToOuter = isInside ? -radii : 1;
    }

    public SectionRays Rays { get; }

    /// <summary>y in the common frame over y in the pass frame; negative from inside.</summary>
    public double ToOuter { get; }

    public double DepthAt(double outerZ) => isInside ? Rays.Thickness - outerZ : outerZ;

    /// <summary>Where the scanning surface does not mirror, as y of the pass frame.</summary>
    public MirrorGap? NearGap(MirrorGap? cap, MirrorGap? root) => isInside ? Scaled(root, -1) : cap;

    /// <summary>Where the opposite surface does not, as y of the pass frame (arc on the scanning surface).</summary>
    public MirrorGap? FarGap(MirrorGap? cap, MirrorGap? root) => isInside ? Scaled(cap, -1 / radii) : Scaled(root, radii);

    private static MirrorGap? Scaled(MirrorGap? gap, double factor) => gap is not { } known ? null
        : factor > 0 ? new MirrorGap(known.From * factor, known.To * factor)
        : new MirrorGap(known.To * factor, known.From * factor);
}
