using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>One thickness and diameter.</summary>
public sealed class CaseStudy
{
    private readonly Lazy<CoverageResult> coverage;

    public CaseStudy(Length thickness, Length? outsideDiameter, ImmutableArray<PassStudy> passes, CoverageResult coverage)
        : this(thickness, outsideDiameter, passes, () => coverage)
    {
    }

    internal CaseStudy(Length thickness, Length? outsideDiameter, ImmutableArray<PassStudy> passes, Func<CoverageResult> coverage)
    {
        Thickness = thickness;
        OutsideDiameter = outsideDiameter;
        Passes = passes;
        this.coverage = new(coverage);
    }

    public Length Thickness { get; }

    /// <summary>Null for a flat part, and at the flat limit of an open band.</summary>
    public Length? OutsideDiameter { get; }

    public ImmutableArray<PassStudy> Passes { get; }

    /// <summary>United over the passes. Worked out when asked for: it costs more than the laws, and most who take a case want its laws.</summary>
    public CoverageResult Coverage => coverage.Value;
}

/// <summary>One pass of a case: where its probes stand, what its beams are, and what taking the data asks.</summary>
public sealed record PassStudy(
    Pass Pass, ImmutableArray<ProbePlace> Probes, ImmutableArray<BeamStudy> Beams, AcquisitionStudy Acquisition);

/// <summary>Where a probe stands, along the scanning surface in the setup's own frame.</summary>
public sealed record ProbePlace(
    int Station, Side Side, Length IndexOffset, Length FrontY, Length BodyFromY, Length BodyToY, Length ContactGap);

/// <summary>A beam at one case: its laws, or its pair, or why neither could be worked out.</summary>
public sealed record BeamStudy(
    Beam Beam, Length? Wavelength, ImmutableArray<LawStudy> Laws, TofdStudy? Tofd, string? NotComputed);

/// <summary>Why a law does not exist.</summary>
public enum LawFault { None, NotRefracted, BelowFirstCritical, OutsideWedge, OutsideArray, UnknownSpeed, Geometry }

/// <summary>One law. Where <paramref name="Fault"/> is set, the numbers that depend on it are NaN.</summary>
/// <param name="Fault">Why it does not exist.</param>
/// <param name="Angle">In the part, from the local normal at the exit point.</param>
/// <param name="WedgeAngle">In the wedge.</param>
/// <param name="Steering">From the array's normal.</param>
/// <param name="FirstElement">Of its aperture; 1 for a single element.</param>
/// <param name="ExitBehindFront">Exit point behind the wedge's front.</param>
/// <param name="ExitY">Exit point across the weld, at the stated index offset.</param>
/// <param name="ActiveAperture">n × pitch − gap.</param>
/// <param name="EffectiveAperture">n p cos β cos θ / cos α.</param>
/// <param name="NearField">In the part from the exit point.</param>
/// <param name="WedgePath">Sound path in the wedge.</param>
/// <param name="GratingLobeAngle">In the part; null where none enters it.</param>
/// <param name="Legs">Its legs, as far as the greatest allowed one.</param>
public sealed record LawStudy(
    LawFault Fault, Angle Angle, Angle WedgeAngle, Angle Steering, int FirstElement, Length ExitBehindFront, Length ExitY,
    Length ActiveAperture, Length EffectiveAperture, Length NearField, Length WedgePath, Angle? GratingLobeAngle,
    ImmutableArray<LegStudy> Legs);

/// <summary>A leg's end. Path is from the exit point, over all legs so far; incidence is from the surface normal there;
/// the beam's width is pulse-echo -6 dB.</summary>
/// <param name="EndsOnReinforcement">The end falls on cap or root: no mirror, and the last leg.</param>
public sealed record LegStudy(
    int Leg, Length EndY, Length EndZ, Length Path, Angle Incidence, Length BeamWidth, bool EndsOnReinforcement);

/// <summary>A diffraction pair; times between index points, wedge delay left out.</summary>
public sealed record TofdStudy(
    Length ProbeCentreSeparation, Length IntersectionDepth, Duration LateralWaveTime, Duration BackWallTime,
    Length NearSurfaceDeadZone, Length BackWallDeadZone, Length CoveredFrom, Length CoveredTo);

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

/// <summary>Null where the inputs do not give it.</summary>
public sealed record AcquisitionStudy(
    int? PulsesPerPosition, Speed? SpeedAtMost, Length? ScanLength, Duration? ScanTime, DataRate? DataRate, DataSize? DataSize);

/// <summary>The sound paths in the part that one law uses inside the examined volume, over all cases; from the exit point.</summary>
public sealed record PathUse(Angle Angle, Length From, Length To);
