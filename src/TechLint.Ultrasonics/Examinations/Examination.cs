using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>
/// The inputs of one examination: one setup, or several that share a band of thickness as numbered passes. Knows no file and no
/// span, is equal by value, and holds numbers rounded once from what the author wrote. All that follows from it is a
/// <see cref="Studies.Study"/>.
/// </summary>
/// <param name="Part">What is examined.</param>
/// <param name="Weld">The weld's section.</param>
/// <param name="Volume">The stated volume.</param>
/// <param name="Thickness">The band of wall thickness that this examination claims; both ends are set.</param>
/// <param name="OutsideDiameter">The band of outside diameter; null for a flat part. An open upper end is judged to the flat limit:
/// the case with no curvature at all.</param>
/// <param name="TofdDrop">How far transmit × receive of a diffraction pair may drop below its greatest value (a set's datum, negative).</param>
/// <param name="Passes">At least one.</param>
public sealed record Examination(
    Part Part, WeldSection Weld, ExaminedVolume Volume, Band<Length> Thickness, Band<Length>? OutsideDiameter,
    Level TofdDrop, EquatableArray<Pass> Passes)
{
    /// <summary>Common practice for the edge of a beam.</summary>
    public static readonly Level CommonSensitivityDrop = new(-6);

    /// <summary>How far below the loudest axis at equal path a sound beam may be and still count for <see cref="Fields.FieldCoverage"/> (a set's datum, negative).</summary>
    public Level SensitivityDrop { get; init; } = CommonSensitivityDrop;

    /// <summary>Common practice of zone-by-zone examination: a ray within 5 deg of a fusion face's normal meets it squarely.</summary>
    public static readonly Angle CommonFusionFaceIncidence = new(5);

    /// <summary>How far a ray may lie from a fusion face's normal where it still counts as meeting it squarely (a set's datum, positive).</summary>
    public Angle FusionFaceIncidence { get; init; } = CommonFusionFaceIncidence;

    /// <summary>
    /// How far the predicted sensitivity of a total-focusing image may drop below its best one for a point to count (negative).
    /// Common practice: the 6 dB that beams are measured by.
    /// </summary>
    public Level ImageDrop { get; init; } = new(-6);

    /// <summary>How far block and part may differ in temperature (a set's datum). 15 K where none says: ISO 17640, setting of range and sensitivity.</summary>
    public TemperatureDifference BlockToPart { get; init; } = new(15);

    /// <summary>At which the references were set; null where not stated. Speeds of sound are taken as true there.</summary>
    public Temperature? BlockTemperature { get; init; }

    /// <summary>Of the surface that is scanned, as the technique claims it; null where not stated.</summary>
    public Band<Temperature>? SurfaceTemperature { get; init; }

    /// <summary>What the check of velocity and delay lets pass, either way, as a share of the velocity; 0 where there is no such check. Counts for
    /// <see cref="Studies.Study.CoverageWithDrifts"/>.</summary>
    public Share VelocityTolerance { get; init; }
}

/// <summary>How the scanning surface bends under the frame.</summary>
public enum Curvature
{
    /// <summary>A plate.</summary>
    Flat,

    /// <summary>A girth weld: beams run along the axis in a flat section; the surface curves along the weld.</summary>
    AlongWeld,

    /// <summary>A longitudinal seam: beams run around the circumference in a curved section.</summary>
    AcrossWeld,
}

/// <summary>What is examined: how its surface bends, and how fast sound runs in it.</summary>
/// <param name="Curvature">How it bends.</param>
/// <param name="Left">Sound speeds of the parent metal at negative y.</param>
/// <param name="Right">Sound speeds of the parent metal at positive y.</param>
public sealed record Part(Curvature Curvature, SoundSpeeds Left, SoundSpeeds Right);

/// <summary>Speeds of sound; null where no value is known.</summary>
public sealed record SoundSpeeds(string Material, Speed? Longitudinal, Speed? Transverse);

/// <summary>The two surfaces of a wall.</summary>
public enum Surface { Outside, Inside }

/// <summary>The two sides of a weld: left is negative y.</summary>
public enum Side { Left, Right }

/// <summary>The two waves that beams are made of.</summary>
public enum Wave { Transverse, Longitudinal }

/// <summary>From the outermost toe of each side plus <paramref name="BesideWeld"/>, between two depths from the outer surface.</summary>
public sealed record ExaminedVolume(Length BesideWeld, Depth From, Depth To);
