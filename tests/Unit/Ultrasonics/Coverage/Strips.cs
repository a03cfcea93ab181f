using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Tests.Unit.Ultrasonics.Coverage;

/// <summary>Beams so short in wavelength that they keep their width: what they see can be worked out by hand.</summary>
internal static class Strips
{
    public static BeamWidth Strip(double width) => new(width, 1e-9, 0);

    /// <summary>An upright strip about y, in leg 1 unless said otherwise.</summary>
    public static SightLine Upright(
        double y, double width, int direction = 1, int legs = 1, double from = 0, double to = double.PositiveInfinity) =>
        new(y, direction, 0, Strip(width), legs, from, to);

    /// <summary>A plate of 20 mm, seen by these lines from outside, examined over −10 to 10 mm and its whole depth.</summary>
    public static CoverageInput Plate(params ImmutableArray<SightLine> lines) =>
        new(20, null, new VolumeRectangle(-10, 10, 0, 20), null, null, [new CoveragePass(Surface.Outside, lines, [])], 0.16);
}
