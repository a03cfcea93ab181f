using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Duals;

/// <summary>Where the beams of a dual probe's two halves cross, and where both are wide enough to meet.</summary>
/// <param name="CrossingDepth">Below the scanning surface, where both axes meet in the plane of incidence between the halves; depths beyond the
/// wall are unfolded, leg upon leg. Null where the axes do not meet in the part.</param>
/// <param name="OverlapFrom">Depth from which the plane between the halves lies within both beams' -3 dB (one-way; -6 dB transmit and receive together). Null where
/// it never does.</param>
/// <param name="OverlapTo">Depth to which it does, at most the end of the last allowed leg.</param>
/// <param name="NotComputed">Why a figure is missing, or null.</param>
public sealed record DualStudy(Length? CrossingDepth, Length? OverlapFrom, Length? OverlapTo, string? NotComputed);
