using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Faces;

/// <summary>What serves a fusion face, the surest first.</summary>
public enum FaceWay
{
    None,

    /// <summary>A ray within the tolerance of the face's normal.</summary>
    Beam,

    /// <summary>A tandem pair: sent, mirrored at the face and at a surface, received.</summary>
    Tandem,

    /// <summary>Face and surface together turn a ray back.</summary>
    CornerEcho,

    /// <summary>The zone of a diffraction pair holds it: its edges diffract, whichever way it stands.</summary>
    Tofd,
}

/// <summary>
/// The fusion faces at one case: for each face and each side that probes stand on, the share of the face's length that is served. A face is served where
/// some seen ray of an allowed leg, inside its window and by an unbroken path, meets it within the tolerance of its normal, else by a tandem pair, a
/// corner echo, or a diffraction pair whose zone holds it. Lengths are those of the face itself; resolution 0.1 mm along it.
/// </summary>
/// <param name="Tolerance">From the normal.</param>
/// <param name="Faces">Left face before right, from the left before from the right; a side without probes has no entry.</param>
/// <param name="NotComputed">Why there is none, or null.</param>
public sealed record FaceStudy(Angle Tolerance, ImmutableArray<FaceService> Faces, string? NotComputed)
{
    public static FaceStudy None(string reason) => new(default, [], reason);
}

/// <summary>One face as one side serves it.</summary>
/// <param name="Face">Which fusion face.</param>
/// <param name="From">The side that the probes stand on; a diffraction pair counts for both.</param>
/// <param name="Served">Of its length, whatever the way.</param>
/// <param name="FromEither">Of its length, from this side or the other.</param>
/// <param name="By">The way that serves most of it.</param>
/// <param name="Ways">What each way serves where no surer one does; ways that serve nothing are left out.</param>
/// <param name="Legs">What rays of each leg meet within the tolerance; legs that meet nothing are left out.</param>
/// <param name="Pieces">Outer surface first.</param>
/// <param name="Worst">Where it is met worst: on what no way serves, else on what beams serve; null where neither is there.</param>
public sealed record FaceService(
    Side Face, Side From, Share Served, Share FromEither, FaceWay By, ImmutableArray<FaceWayShare> Ways, ImmutableArray<FaceLegShare> Legs,
    ImmutableArray<FacePieceService> Pieces, FacePlace? Worst);

/// <summary>A way and its share of the face's length.</summary>
public readonly record struct FaceWayShare(FaceWay Way, Share Share);

/// <summary>A leg and the share of the face's length that its rays meet squarely.</summary>
public readonly record struct FaceLegShare(int Leg, Share Share);

/// <summary>One piece of a face: a bevel, a root face, an arc, a bond line.</summary>
/// <param name="From">Its end nearer the outer surface.</param>
/// <param name="To">Its other end.</param>
/// <param name="IsArc">An arc, not straight.</param>
/// <param name="Slope">Of the piece from the upright, between its ends; a root face's is 0.</param>
/// <param name="Served">Of its length.</param>
/// <param name="By">The way that serves most of it.</param>
/// <param name="Worst">As for the face.</param>
public sealed record FacePieceService(
    SectionPlace From, SectionPlace To, bool IsArc, Angle Slope, Share Served, FaceWay By, FacePlace? Worst);

/// <summary>A place on a face and how it is met there.</summary>
/// <param name="Place">In the frame of the outer surface, along the section.</param>
/// <param name="Incidence">From the normal, of the seen ray that comes nearest to it; null where no ray is seen there.</param>
public readonly record struct FacePlace(SectionPlace Place, Angle? Incidence);

/// <summary>The worst case of the faces: the least share served from either side, then the least served altogether.</summary>
/// <param name="Study">There.</param>
/// <param name="LeftError">Of the left probes, away from the weld positive.</param>
/// <param name="RightError">Of the right probes.</param>
/// <param name="SkewError">Of all probes.</param>
/// <param name="Misalignment">How much deeper the right edge lies than the left one.</param>
public sealed record WorstFaces(
    FaceStudy Study, Length Thickness, Length? OutsideDiameter, Length LeftError, Length RightError, Angle SkewError, Length Misalignment);
