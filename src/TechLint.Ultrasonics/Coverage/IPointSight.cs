using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// What sees places point by point and has no closed form along a row. In the pass's own frame, mm: y along the scanning surface, z from it.
/// Nothing outside the stated bounds is seen.
/// </summary>
internal interface IPointSight
{
    double FromY { get; }

    double ToY { get; }

    double FromZ { get; }

    double ToZ { get; }

    bool Sees(double y, double z);
}

/// <param name="Sight">Point by point.</param>
/// <param name="Side">Where its probe stands, in the pass's own frame: it counts for that side as well as for the volume.</param>
internal sealed record SidedSight(IPointSight Sight, Side Side);
