using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// Two exit points that face each other across the section, and the paths between them. On a curved section all straight
/// lines: the chord, its sagitta, and the line to a point of the mid-plane. mm and rad, in the pass's own frame.
/// </summary>
internal sealed class PairGeometry
{
    private readonly SectionFrame frame;
    private readonly double chordX;
    private readonly double chordZ;
    private readonly double chordSlopeX;
    private readonly double chordSlopeZ;

    public PairGeometry(SectionRays section, double leftExitY, double rightExitY, bool transmitsFromLeft)
    {
        Section = section;
        LeftExitY = leftExitY;
        RightExitY = rightExitY;
        TransmitsFromLeft = transmitsFromLeft;
        frame = new SectionFrame(section);
        var left = frame.Place(leftExitY, 0);
        var right = frame.Place(rightExitY, 0);
        (chordX, chordZ) = left;
        (chordSlopeX, chordSlopeZ) = (right.X - left.X, right.Z - left.Z);
        Separation = Math.Sqrt((chordSlopeX * chordSlopeX) + (chordSlopeZ * chordSlopeZ));
        MiddleY = (leftExitY + rightExitY) / 2;

        // R (1 − cos φ) as 2 R sin²(φ/2): no loss of digits at large radii.
        var half = section.IsCurved ? Math.Sin((rightExitY - leftExitY) / (4 * section.ScanRadius)) : 0;
        Sagitta = 2 * section.ScanRadius * half * half;
    }

    public SectionRays Section { get; }

    public double LeftExitY { get; }

    public double RightExitY { get; }

    public bool TransmitsFromLeft { get; }

    public double MiddleY { get; }

    /// <summary>Straight line between the exit points: the probe centre separation, 2S.</summary>
    public double Separation { get; }

    /// <summary>Height of the scanning surface over the chord at its middle; 0 when flat.</summary>
    public double Sagitta { get; }

    /// <summary>
    /// Path of the lateral wave. From outside it is the chord; from inside the chord runs through the bore, and the first
    /// arrival follows the surface.
    /// </summary>
    public double LateralPath => Section.Bend < 0 ? RightExitY - LeftExitY : Separation;

    /// <summary>The chord runs through the part, not through the bore of a pipe.</summary>
    public bool LateralWaveExists => RightExitY > LeftExitY && (Section.Bend <= 0 || Sagitta < Section.Thickness);

    public double BackWallPath => PathAt(Section.Thickness);

    /// <summary>Transmit + receive path of a point of the mid-plane.</summary>
    public double PathAt(double depth)
    {
        var belowChord = depth - (Section.Bend * Sagitta);
        return 2 * Math.Sqrt((Separation * Separation / 4) + (belowChord * belowChord));
    }

    /// <summary>The depth on the mid-plane, below the chord, whose path this is: <c>sqrt((path/2)² − S²)</c>; the scanning surface's sagitta added.</summary>
    public double DepthOf(double path)
    {
        var square = (path * path / 4) - (Separation * Separation / 4);
        return square < 0 ? double.NaN : Math.Sqrt(square) + (Section.Bend * Sagitta);
    }

    /// <summary>Points above the chord mirror those below it in time; they count as unseen.</summary>
    public bool IsBelowChord(double y, double z)
    {
        if (Section.Bend <= 0) return true;
        var (x, depth) = frame.Place(y, z);
        return (chordSlopeX * (depth - chordZ)) - (chordSlopeZ * (x - chordX)) >= 0;
    }

    /// <summary>Where the beam axes cross, from the scanning surface; NaN where they do not within it.</summary>
    /// <param name="leftAngle">Of the left beam from its local normal, towards the right.</param>
    /// <param name="rightAngle">Of the right beam, towards the left.</param>
    public double IntersectionDepth(double leftAngle, double rightAngle)
    {
        // Triangle of the two exit points: base angles are measured from the chord, which is turned by half the arc from each normal.
        var turn = Section.IsCurved ? Section.Bend * (RightExitY - LeftExitY) / (2 * Section.ScanRadius) : 0;
        var (left, right) = (leftAngle + turn, rightAngle + turn);
        var sum = Math.Tan(left) + Math.Tan(right);
        if (!(sum > 0) || !(Math.Abs(left) < Math.PI / 2) || !(Math.Abs(right) < Math.PI / 2)) return double.NaN;
        var below = Separation / sum;
        if (!Section.IsCurved) return below;

        // Place below the chord → radius → depth.
        var across = (below * Math.Tan(left)) - (Separation / 2);
        var centre = Math.Sqrt((Section.ScanRadius * Section.ScanRadius) - (Separation * Separation / 4));
        var fromAxis = Section.Bend > 0 ? centre - below : centre + below;
        var radius = Math.Sqrt((fromAxis * fromAxis) + (across * across));
        return fromAxis < 0 ? double.NaN : Section.Bend * (Section.ScanRadius - radius);
    }
}
