using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>What follows from a total-focusing image at one case, its probe at its stated place.</summary>
/// <param name="Transmissions">Of the full-matrix capture that it is made from: one an element. Images of one capture share them.</param>
/// <param name="Reach">Share of the region (within the wall) that is seen: some element pair has a real path there, and the predicted sensitivity is within
/// the stated drop of the image's best. To the resolution of the map: half a wavelength, or 1/63 of the region's width and 1/31 of its depth.</param>
/// <param name="Wavelength">Of the slowest wave of the path: what the image's grid is measured by.</param>
/// <param name="Corners">The region's corners: left top, right top, left bottom, right bottom.</param>
/// <param name="BestAt">Where the predicted sensitivity is greatest; null where nothing is reached.</param>
public sealed record ImageStudy(
    int Transmissions, Share Reach, Length Wavelength, ImmutableArray<ImageCorner> Corners, ImagePlace? BestAt);

/// <summary>A place of the section in the setup's own frame: across from the weld centreline along the scanning surface, below that surface.</summary>
public readonly record struct ImagePlace(Length Y, Length Z);

/// <summary>
/// How wide the aperture opens at a corner of the region: the angle between the outermost rays of all elements that reach it. It sets how sharp the image is
/// there: the width of a focused point is near <c>λ / (2 sin(opening / 2))</c> (common practice).
/// </summary>
/// <param name="Place">The corner.</param>
/// <param name="Transmit">Over the transmitting way; null where fewer than two elements reach it.</param>
/// <param name="Receive">Over the receiving way.</param>
/// <param name="IsFar">The corner farthest from the probe's front.</param>
public readonly record struct ImageCorner(ImagePlace Place, Angle? Transmit, Angle? Receive, bool IsFar);
