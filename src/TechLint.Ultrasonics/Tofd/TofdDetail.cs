using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>A diffraction pair in full. Depths from the scanning surface, on the pair's true mid-plane, y in the setup's own frame.</summary>
/// <param name="MidPlaneY">Middle of the index points, along the scanning surface: 0 where both offsets are equal.</param>
/// <param name="ConvertedBackWallTime">First echo of the back wall that changes its wave there, by least time; null where a speed is unknown or the bore is in the way.</param>
/// <param name="TransverseBackWallTime">Back wall by transverse waves both ways: <c>path / cT</c>.</param>
/// <param name="BackWallDeadZoneCountedBack">The back wall's dead zone in its other form, the pulse counted back from the wall (some 3 % larger).</param>
/// <param name="StatedSeparation">As the author states it; null where left out.</param>
/// <param name="SeparationDifference">Stated less computed.</param>
/// <param name="Covered6">Covered depth where transmit × receive stays within 6 dB of its greatest value on the mid-plane.</param>
/// <param name="Covered12">Within 12 dB.</param>
/// <param name="Covered20">Within 20 dB.</param>
/// <param name="CoveredInZone">Covered depth at the set's drop, as far as it lies in the pair's zone.</param>
/// <param name="OffCentre">Dead zones at toes and edges of the examined volume.</param>
/// <param name="ResolutionFrom">Spatial resolution at the upper end of the covered depth.</param>
/// <param name="ResolutionTo">At the lower end.</param>
/// <param name="CentrelineDepthError">How far too deep a tip on the weld centreline is read at most over the covered depth; 0 where the mid-plane is there.</param>
public sealed record TofdDetail(
    Length MidPlaneY, Duration? ConvertedBackWallTime, Duration? TransverseBackWallTime, Length BackWallDeadZoneCountedBack,
    Length? StatedSeparation, Length? SeparationDifference, CoveredDepth Covered6, CoveredDepth Covered12, CoveredDepth Covered20,
    CoveredDepth CoveredInZone, EquatableArray<OffCentreDeadZone> OffCentre, Length ResolutionFrom, Length ResolutionTo,
    Length CentrelineDepthError);

/// <summary>A stretch of depth; both ends equal where nothing is covered.</summary>
public readonly record struct CoveredDepth(Length From, Length To)
{
    public bool IsEmpty => !(To > From);
}

/// <summary>
/// Dead zones under a place of the scanning surface: below the surface, and above the opposite one, by the ellipses of equal time.
/// NaN where the place does not lie between the index points.
/// </summary>
public readonly record struct OffCentreDeadZone(Length Y, Length NearSurface, Length BackWall);
