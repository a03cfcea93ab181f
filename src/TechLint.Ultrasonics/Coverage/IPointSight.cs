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
