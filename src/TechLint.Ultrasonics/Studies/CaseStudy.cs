using System.Collections.Immutable;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Delays;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Duals;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Reflection;
using TechLint.Ultrasonics.Tandem;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Ultrasonics.Studies;

/// <summary>One thickness and diameter.</summary>
public sealed class CaseStudy
{
    private readonly Lazy<CoverageResult> coverage;
    private readonly Lazy<FaceStudy> faces;

    public CaseStudy(
        Length thickness, Length? outsideDiameter, ImmutableArray<PassStudy> passes, CoverageResult coverage, FaceStudy? faces = null)
        : this(thickness, outsideDiameter, passes, () => coverage, faces is null ? null : () => faces)
    {
    }

    internal CaseStudy(
        Length thickness, Length? outsideDiameter, ImmutableArray<PassStudy> passes, Func<CoverageResult> coverage, Func<FaceStudy>? faces = null)
    {
        Thickness = thickness;
        OutsideDiameter = outsideDiameter;
        Passes = passes;
        this.coverage = new(coverage);
        this.faces = new(faces ?? (() => FaceStudy.None("no section is at hand")));
    }

    public Length Thickness { get; }

    /// <summary>Null for a flat part, and at the flat limit of an open band.</summary>
    public Length? OutsideDiameter { get; }

    public ImmutableArray<PassStudy> Passes { get; }

    /// <summary>Time and data of all passes together.</summary>
    public AcquisitionTotals AcquisitionTotals => Acquiring.Totals.Of(Passes);

    /// <summary>United over the passes. Worked out when asked for: it costs more than the laws, and most who take a case want its laws.</summary>
    public CoverageResult Coverage => coverage.Value;

    /// <summary>What of the volume the beams reach loudly enough. Worked out when asked for: seconds, not milliseconds. Null in a hand-made case.</summary>
    public Fields.FieldCoverage? FieldCoverage => FieldCoverageWork?.Value;

    internal Lazy<Fields.FieldCoverage>? FieldCoverageWork { get; init; }

    /// <summary>How the fusion faces are met, united over the passes. Worked out when asked for (grade study).</summary>
    public FaceStudy Faces => faces.Value;
}

/// <summary>One pass of a case: where its probes stand, what its beams are, and what taking the data asks.</summary>
public sealed record PassStudy(
    Pass Pass, ImmutableArray<ProbePlace> Probes, ImmutableArray<BeamStudy> Beams, AcquisitionStudy Acquisition);

/// <summary>Where a probe stands, along the scanning surface in the setup's own frame.</summary>
public sealed record ProbePlace(
    int Station, Side Side, Length IndexOffset, Length FrontY, Length BodyFromY, Length BodyToY, Length ContactGap)
{
    /// <summary>How far it can tilt either way on the curve until an edge of its sole touches; NaN where it does not rest there.</summary>
    public Angle RockingAngle { get; init; }
}

/// <summary>A beam at one case: its laws, or its pair, or why neither could be worked out.</summary>
public sealed record BeamStudy(
    Beam Beam, Length? Wavelength, ImmutableArray<LawStudy> Laws, TofdStudy? Tofd, string? NotComputed)
{
    /// <summary>Of a total-focusing beam; null for every other scan.</summary>
    public ImageStudy? Image { get; init; }

    /// <summary>Of a tandem beam; null for every other scan, and where it could not be worked out.</summary>
    public TandemStudy? Tandem { get; init; }

    /// <summary>What a drift of temperature does to its laws; null where it has none.</summary>
    public TemperatureStudy? Temperature { get; init; }
}

/// <summary>Why a law does not exist.</summary>
public enum LawFault { None, NotRefracted, BelowFirstCritical, OutsideWedge, OutsideArray, UnknownSpeed, Geometry }

/// <summary>One law. Where <paramref name="Fault"/> is set, the numbers that depend on it are NaN.</summary>
/// <param name="Fault">Why it does not exist.</param>
/// <param name="Angle">In the part, from the local normal at the exit point.</param>
/// <param name="WedgeAngle">In the wedge, from the normal of the sole where the beam leaves it: sin α = (vw/v) sin θ.</param>
/// <param name="Steering">From the array's normal: β = α − slope on a flat sole; towards the front positive.</param>
/// <param name="FirstElement">Of its aperture; 1 for a single element.</param>
/// <param name="ExitBehindFront">Exit point behind the wedge's front.</param>
/// <param name="ExitY">Exit point across the weld, at the stated index offset.</param>
/// <param name="ActiveAperture">n × pitch − gap.</param>
/// <param name="EffectiveAperture">n p cos β cos θ / cos α, in the plane of incidence. Plane interface, or locally a curved one. Common practice.</param>
/// <param name="NearField">In the part from the exit point, never negative: N of the effective aperture (round: (D² − λ²)/4λ; rectangle: k L²/4λ, see <c>NearField</c>) less
/// the wedge path's equivalent, (vw/v)(cos²θ / cos²α) of it in the plane of incidence, vw/v across it.</param>
/// <param name="WedgePath">Sound path in the wedge.</param>
/// <param name="GratingLobeAngle">In the part; null where none enters it.</param>
/// <param name="Legs">Its legs, as far as the greatest allowed one.</param>
public sealed record LawStudy(
    LawFault Fault, Angle Angle, Angle WedgeAngle, Angle Steering, int FirstElement, Length ExitBehindFront, Length ExitY,
    Length ActiveAperture, Length EffectiveAperture, Length NearField, Length WedgePath, Angle? GratingLobeAngle,
    ImmutableArray<LegStudy> Legs)
{
    /// <summary>Of a dual probe's law; null for single probes.</summary>
    public DualStudy? Dual { get; init; }

    /// <summary>How wide the far field opens in the plane of incidence; null where the law does not exist.</summary>
    public Fields.Divergence? Divergence { get; init; }

    /// <summary>Echo level of the grating lobe relative to the main lobe (<c>Fields.GratingLevel</c>); null where no lobe enters the part.</summary>
    public Level? GratingLobeLevel => GratingLobeWork?.Value;

    /// <summary>Null where the law was not worked out as a study.</summary>
    internal Lazy<Level?>? GratingLobeWork { get; init; }

    /// <summary>The delays of its elements; null where the law was not worked out as a study.</summary>
    public FocalLaw? Focal { get; init; }

    /// <summary>What full rock, or a contour cut for another diameter, does to it; null where the law was not worked out as a study.</summary>
    public RockShift? Rock { get; init; }
}

/// <summary>A leg's end. Path is from the exit point, over all legs so far; incidence is from the surface normal there (flat: θ; on the bore from outside
/// sin i = (Ro/Ri) sin θ; turned beams in space); the beam's width is pulse-echo -6 dB (simple model, see <c>BeamWidth</c>).</summary>
/// <param name="EndsOnReinforcement">The end falls on cap or root: no mirror, and the last leg.</param>
public sealed record LegStudy(
    int Leg, Length EndY, Length EndZ, Length Path, Angle Incidence, Length BeamWidth, bool EndsOnReinforcement)
{
    /// <summary>What the surface at the leg's end makes of its wave; null beside a reason.</summary>
    public Reflected? Reflected { get; init; }

    /// <summary>Why <see cref="Reflected"/> is null.</summary>
    public string? NotReflected { get; init; }

    /// <summary>The bounces before this leg have left its own wave less than a quarter of the energy (common practice; see <see cref="FreeSurface"/>).</summary>
    public bool IsModeConverted { get; init; }
}

/// <summary>A diffraction pair; times between index points, wedge delay left out.</summary>
public sealed record TofdStudy(
    Length ProbeCentreSeparation, Length IntersectionDepth, Duration LateralWaveTime, Duration BackWallTime,
    Length NearSurfaceDeadZone, Length BackWallDeadZone, Length CoveredFrom, Length CoveredTo)
{
    /// <summary>The rest of its figures; null only where a study is made by hand.</summary>
    public TofdDetail? Detail { get; init; }
}

/// <summary>Shares of the examined rectangle; rings of places in the frame of the outer surface, z from it.</summary>
/// <param name="Volume">Seen by any beam.</param>
/// <param name="Left">Seen by sound beams from the left.</param>
/// <param name="Right">Seen by sound beams from the right.</param>
/// <param name="BothSides">Seen from both.</param>
/// <param name="Unseen">What no beam sees, traced only where asked for.</param>
/// <param name="LargestUnseenAcross">Extent in y of the largest unseen polygon.</param>
/// <param name="LargestUnseenDepth">Its extent in z.</param>
/// <param name="IsComplete">No unseen polygon exceeds 0.5 mm in both y and z.</param>
/// <param name="NotComputed">Why there is no figure, or null.</param>
public sealed record CoverageResult(
    Share Volume, Share Left, Share Right, Share BothSides, ImmutableArray<ImmutableArray<SectionPlace>> Unseen,
    Length LargestUnseenAcross, Length LargestUnseenDepth, bool IsComplete, string? NotComputed);

/// <summary>A place in the section: across the weld, and below the outer surface.</summary>
public readonly record struct SectionPlace(Length Y, Length Z);

/// <summary>The worst case and where it is. The errors move the left and right probes away from the weld where positive.</summary>
public sealed record WorstCoverage(
    CoverageResult Result, Length Thickness, Length? OutsideDiameter, Length LeftError, Length RightError, string? NotComputed)
{
    /// <summary>Turn of all probes towards +x beside the stated skew.</summary>
    public Angle SkewError { get; init; }

    /// <summary>True speed of sound in the part against the stated one, as a share of it.</summary>
    public Share PartSpeedError { get; init; }

    /// <summary>True speed of sound in the wedges against the stated one, as a share of it.</summary>
    public Share WedgeSpeedError { get; init; }

    /// <summary>How much deeper the right edge lies than the left one.</summary>
    public Length Misalignment { get; init; }
}

/// <summary>How far the stated index offsets may move so that the volume is covered: away from the weld positive; both ends may have one sign.</summary>
public sealed record OffsetWindow(Length From, Length To);

/// <summary>
/// How far the probes of a setup that send sound beams may move together, from where they stand, before the volume is no longer complete somewhere in the range
/// and its tolerances. Never beyond cap and the search's reach.
/// </summary>
/// <param name="Towards">Towards the weld.</param>
/// <param name="Away">Away from it.</param>
/// <param name="NotComputed">Why there is none, or null.</param>
public sealed record OffsetMargin(Length? Towards, Length? Away, string? NotComputed);

/// <summary>What one pass takes. Null where the inputs do not give it. Formulas stand at <c>Acquiring/</c>, each beside its own figure.</summary>
/// <param name="PulsesPerPosition">One sequence over all laws and beams of the frame: sum of laws × averaging, a capture once.</param>
/// <param name="SpeedAtMost">Pulse rate × increment / pulses per position.</param>
/// <param name="ScanLength">Way of the frame, all segments together.</param>
/// <param name="ScanTime">Scan length / speed (the stated one, else the speed at most).</param>
/// <param name="DataRate">Bytes per position × speed / increment, in 10⁶ bytes a second.</param>
/// <param name="DataSize">Bytes per position × scan length / increment, in 10⁶ bytes.</param>
public sealed record AcquisitionStudy(
    int? PulsesPerPosition, Speed? SpeedAtMost, Length? ScanLength, Duration? ScanTime, DataRate? DataRate, DataSize? DataSize)
{
    /// <summary>The greatest pulse rate at which every recorded signal ends, and the instrument has recovered, before the next pulse; never more than
    /// the instrument gives (see <c>PulseInterval</c>).</summary>
    public Frequency? PulseRateAtMost { get; init; }

    /// <summary>The shortest sound path in the part whose echo of one pulse falls into the recorded window of the next, at the stated pulse rate
    /// (see <c>PulseInterval</c>).</summary>
    public Length? AmbiguityPath { get; init; }

    /// <summary>How many times the frame is set down.</summary>
    public int? Segments { get; init; }

    /// <summary>Recorded positions: in each segment one at its start and one at every increment until its end is reached or passed.</summary>
    public long? Lines { get; init; }

    /// <summary>Encoder steps in one increment; the recording is regular where it is whole.</summary>
    public Steps? StepsPerIncrement { get; init; }

    /// <summary>How far a line may lie behind its due place because the encoder knows whole steps only (see <c>EncoderGrid</c>).</summary>
    public Length? PositionErrorAtMost { get; init; }

    /// <summary>The least and the greatest distance of neighbouring lines on the encoder's steps.</summary>
    public Band<Length>? Increments { get; init; }

    /// <summary>The speed at which the data reach what the instrument can store.</summary>
    public Speed? SpeedAtMostForData { get; init; }
}

/// <summary>What all passes of one examination take together: each pass is scanned after the other, so times and data add up; speeds do not.
/// Null where a pass does not give its own.</summary>
public sealed record AcquisitionTotals(Duration? ScanTime, DataSize? DataSize);

/// <summary>The sound paths in the part that one law uses inside the examined volume, over all cases; from the exit point.</summary>
public sealed record PathUse(Angle Angle, Length From, Length To);
