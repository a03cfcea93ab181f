using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>The rectangle of the section that is imaged, in the setup's own frame.</summary>
/// <param name="FromAcross">From the weld centreline along the scanning surface; left is negative.</param>
/// <param name="ToAcross">Its right end.</param>
/// <param name="FromDepth">From the scanning surface.</param>
/// <param name="ToDepth">Its lower end; what lies beyond the wall is no part of the region.</param>
public sealed record ImageRegion(Length FromAcross, Length ToAcross, Depth FromDepth, Depth ToDepth);
