using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Tandem;

/// <summary>A tandem pair at one case. Depths from the scanning surface; y in the setup's own frame.</summary>
/// <param name="Spacing">Between the exit points, along the scanning surface.</param>
/// <param name="CrossingDepth">Where the rear beam's axis in leg 2 crosses the front one's in leg 1; NaN where they do not within the wall.</param>
/// <param name="CrossingY">Across the weld, there.</param>
/// <param name="ServedFrom">Upper end of the depths, under that place, that both beams' -6 dB widths hold; NaN where the axes do not cross.</param>
/// <param name="ServedTo">Lower end.</param>
/// <param name="SpacingForZone">The spacing that serves the middle of the stated zone at the mean of both angles.</param>
/// <param name="SpacingError">Spacing less the one for the zone.</param>
public sealed record TandemStudy(
    Length Spacing, Length CrossingDepth, Length CrossingY, Length ServedFrom, Length ServedTo, Length SpacingForZone, Length SpacingError);
