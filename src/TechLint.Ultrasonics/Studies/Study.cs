using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// All that follows from an examination, worked out when asked and kept. Thread-safe; the same examination gives the same
/// digits on any machine. What cannot be computed is null beside a reason, never a guess.
/// </summary>
public sealed class Study
{
    /// <summary>Raised whenever a verdict kernel changes, so that kept results are not mixed.</summary>
    public const int KernelVersion = 1;

    public Study(Examination examination) => Examination = examination;

    public Examination Examination { get; }

    /// <summary>The section at one thickness and diameter, probes at their stated places.</summary>
    /// <param name="thickness">Wall.</param>
    /// <param name="outsideDiameter">Null for a flat part.</param>
    public CaseStudy At(Length thickness, Length? outsideDiameter) => throw new NotImplementedException();

    /// <summary>The cases that stand for the band: both ends of thickness and diameter, and where an extreme was found.</summary>
    public ImmutableArray<CaseStudy> Cases => throw new NotImplementedException();

    /// <summary>The least coverage over thickness, diameter and positioning tolerance.</summary>
    public WorstCoverage Coverage => throw new NotImplementedException();

    /// <summary>
    /// The index offsets that cover: moves the probes named (all sound-beam probes of a pass where empty) together by the same amount away from or towards
    /// the weld, over the given thickness band, tolerance included. Null where none within reach covers.
    /// </summary>
    public OffsetWindow? CoveringOffsets(string passId, ImmutableArray<int> stations, Band<Length> thickness) => throw new NotImplementedException();
}

/// <summary>One thickness and diameter.</summary>
public sealed record CaseStudy(
    Length Thickness, Length? OutsideDiameter, ImmutableArray<PassStudy> Passes, CoverageResult Coverage);

public sealed record PassStudy(
    Pass Pass, ImmutableArray<ProbePlace> Probes, ImmutableArray<BeamStudy> Beams, AcquisitionStudy Acquisition);

/// <summary>Where a probe stands. Lengths in mm along the scanning surface, y as in the setup's own frame.</summary>
public sealed record ProbePlace(
    int Station, Side Side, double IndexOffset, double FrontY, double BodyFromY, double BodyToY, double ContactGap);

/// <summary>A beam at one case: its laws, or its pair, or why neither could be worked out.</summary>
public sealed record BeamStudy(
    Beam Beam, double? Wavelength, ImmutableArray<LawStudy> Laws, TofdStudy? Tofd, string? NotComputed);

public enum LawFault { None, NotRefracted, BelowFirstCritical, OutsideWedge, OutsideArray, UnknownSpeed, Geometry }

/// <summary>One law. mm, deg. Where <paramref name="Fault"/> is set, the numbers that depend on it are NaN.</summary>
/// <param name="Fault">Why it does not exist.</param>
/// <param name="Angle">In the part.</param>
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
    LawFault Fault, double Angle, double WedgeAngle, double Steering, int FirstElement, double ExitBehindFront, double ExitY,
    double ActiveAperture, double EffectiveAperture, double NearField, double WedgePath, double? GratingLobeAngle,
    ImmutableArray<LegStudy> Legs);

/// <summary>A leg's end. Path is from the exit point, over all legs so far; incidence is from the surface normal there.</summary>
/// <param name="EndsOnReinforcement">The end falls on cap or root: no mirror, and the last leg.</param>
public sealed record LegStudy(int Leg, double EndY, double EndZ, double Path, double Incidence, double BeamWidth, bool EndsOnReinforcement);

/// <summary>A diffraction pair: mm and us.</summary>
public sealed record TofdStudy(
    double ProbeCentreSeparation, double IntersectionDepth, double LateralWaveTime, double BackWallTime, double NearSurfaceDeadZone,
    double BackWallDeadZone, double CoveredFrom, double CoveredTo);

/// <summary>Percent of the examined rectangle; rings of y, z in mm in the frame of the outer surface, z from it.</summary>
/// <param name="Volume">Seen by any beam.</param>
/// <param name="Left">Seen by sound beams from the left.</param>
/// <param name="Right">Seen by sound beams from the right.</param>
/// <param name="BothSides">Seen from both.</param>
/// <param name="Unseen">What no beam sees, traced only where asked for.</param>
/// <param name="LargestUnseenAcross">Greatest extent in y of an unseen polygon that also exceeds the resolution in z.</param>
/// <param name="LargestUnseenDepth">Its extent in z.</param>
/// <param name="IsComplete">No unseen polygon exceeds 0.5 mm in both y and z.</param>
/// <param name="NotComputed">Why there is no figure, or null.</param>
public sealed record CoverageResult(
    double Volume, double Left, double Right, double BothSides, ImmutableArray<ImmutableArray<SectionPlace>> Unseen,
    double LargestUnseenAcross, double LargestUnseenDepth, bool IsComplete, string? NotComputed);

public readonly record struct SectionPlace(double Y, double Z);

/// <summary>The worst case and where it is. The errors are those of left and right probes, away from the weld positive.</summary>
public sealed record WorstCoverage(
    CoverageResult Result, Length Thickness, Length? OutsideDiameter, Length LeftError, Length RightError, string? NotComputed);

/// <summary>The window of index offsets that covers: how far the stated ones may move (mm, away from the weld positive; both ends may have one sign).</summary>
public sealed record OffsetWindow(double From, double To);

/// <summary>Null where the inputs do not give it.</summary>
public sealed record AcquisitionStudy(
    int? PulsesPerPosition, double? SpeedAtMost, double? ScanLength, double? ScanTime, double? DataRate, double? DataSize);
