using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Tests.Validation;

/// <summary>Sections that are hard in different ways, each for a reason.</summary>
internal static class CoverageCases
{
    private const double Wavelength = 0.65;

    public static readonly BeamWidth Plain = new(8, Wavelength, 9);
    public static readonly BeamWidth Focused = new(10, Wavelength, 9, 18);

    public static readonly ImmutableDictionary<string, CoverageInput> All = new Dictionary<string, CoverageInput>(StringComparer.Ordinal)
    {
        ["flat, both sides"] = Flat(20, Both(22, 40, 70, 5, Plain, 0b11)),
        ["flat, one side"] = Flat(20, Fan(-22, 1, 40, 70, 5, Plain, 0b11)),
        ["flat, first leg alone"] = Flat(20, Both(14, 45, 70, 5, Plain, 0b1)),
        ["flat, second leg alone"] = Flat(15, Both(30, 45, 70, 5, Plain, 0b10)),
        ["flat, cap and root end legs"] = Flat(16, Both(34, 45, 70, 5, Plain, 0b111)) with { Cap = new(-9, 7), Root = new(-3, 4) },
        ["flat, third leg alone over cap and root"] = Flat(10, Both(40, 50, 70, 4, Plain, 0b100)) with { Cap = new(-8, 8), Root = new(-3, 3) },
        ["flat, window"] = Flat(20, Both(24, 40, 70, 6, Plain, 0b11, from: 22, to: 47)),
        ["flat, window that starts beyond the wall"] = Flat(8, Both(12, 10, 60, 10, Plain, 0b1, from: 9, to: 20)),
        ["flat, focused"] = Flat(22, Both(22, 40, 70, 3, Focused, 0b11)),
        ["flat, focused, grazing"] = Flat(12, Both(16, 60, 80, 4, new BeamWidth(16, 0.4, 2, 12), 0b11)),
        ["flat, one focused beam"] = Flat(30, Fan(-20, 1, 55, 55, 1, new BeamWidth(16, 0.5, 4, 24), 0b1)),
        ["flat, upright beam over the weld"] = Flat(20, Fan(-4, 1, 0, 0, 1, Plain, 0b111)),
        ["flat, wide beam near its exit"] = Flat(20, Fan(-12, 1, 30, 30, 1, new BeamWidth(14, 1.5, 0), 0b11)),
        ["flat, from inside"] = Flat(18, Both(24, 40, 70, 5, Plain, 0b11), Surface.Inside) with { Cap = new(-10, 8), Root = new(-4, 2) },
        ["curved, outside"] = Curved(12, 200, Both(22, 35, 65, 10, new BeamWidth(12, 0.5, 12), 0b1)),
        ["curved, outside, thick"] = Curved(25, 220, Both(20, 20, 60, 5, Plain, 0b11)),
        ["curved, outside, three legs over cap and root"] =
            Curved(10, 168.3, Both(28, 40, 60, 5, Plain, 0b110)) with { Cap = new(-7, 8), Root = new(-4, 3) },
        ["curved, outside, beams that miss the bore"] = Curved(20, 160, Fan(-25, 1, 45, 75, 5, Plain, 0b11)),
        ["curved, outside, focused"] = Curved(16, 406.4, Both(24, 40, 70, 4, Focused, 0b11)),
        ["curved, outside, focused, grazing"] = Curved(14, 180, Both(18, 50, 70, 4, new BeamWidth(16, 0.4, 2, 12), 0b11)),
        ["curved, outside, window"] = Curved(16, 323.9, Both(24, 40, 65, 5, Plain, 0b11, from: 20, to: 44)),
        ["curved, outside, upright"] = Curved(20, 160, Fan(-4, 1, 0, 0, 1, Plain, 0b11)),
        ["curved, inside"] = Curved(15, 300, Both(26, 40, 70, 5, Plain, 0b11), Surface.Inside) with { Cap = new(-9, 10), Root = new(-4, 5) },
        ["curved, inside, three legs"] = Curved(10, 200, Fan(-30, 1, 40, 75, 5, Focused, 0b111), Surface.Inside) with { Cap = new(-6, 9) },
        ["diffraction pair alone"] = Flat(25, [], Surface.Outside, Pair(25, null)),
        ["diffraction pair beside beams"] = Flat(25, Fan(-20, 1, 45, 60, 5, Plain, 0b1), Surface.Outside, Pair(25, null)),
        ["diffraction pair on a curve"] = Curved(20, 400, Fan(-24, 1, 50, 60, 5, Plain, 0b1), Surface.Outside, Pair(20, 400)),
        ["two passes, one from each surface, flat"] = TwoPasses(18, null),
        ["two passes, one from each surface, curved"] = TwoPasses(18, 250),
        ["part of the depth"] = Flat(20, Both(18, 45, 65, 5, Plain, 0b11)) with { Volume = new(-12, 15, 6, 13) },
    }.ToImmutableDictionary(StringComparer.Ordinal);

    public static CoverageInput Flat(
        double thickness, ImmutableArray<SightLine> lines, Surface surface = Surface.Outside, params ImmutableArray<IPointSight> pairs) =>
        new(thickness, null, new(-15, 17, 0, thickness), null, null, [new(surface, lines, pairs)], Wavelength / 4);

    public static CoverageInput Curved(
        double thickness, double diameter, ImmutableArray<SightLine> lines, Surface surface = Surface.Outside,
        params ImmutableArray<IPointSight> pairs) =>
        new(thickness, diameter, new(-15, 17, 0, thickness), null, null, [new(surface, lines, pairs)], Wavelength / 4);

    public static ImmutableArray<SightLine> Fan(
        double exitY, int direction, int from, int to, int step, BeamWidth width, int legs, double pathFrom = 0,
        double pathTo = double.PositiveInfinity) =>
        [.. Enumerable.Range(0, ((to - from) / step) + 1).Select(index => new SightLine(
            exitY - (direction * 0.1 * index), direction, (from + (index * step)) * Math.PI / 180, width, legs, pathFrom, pathTo))];

    public static ImmutableArray<SightLine> Both(
        double offset, int angleFrom, int angleTo, int step, BeamWidth width, int legs, double from = 0, double to = double.PositiveInfinity) =>
        [.. Fan(-offset, 1, angleFrom, angleTo, step, width, legs, from, to), .. Fan(offset + 3, -1, angleFrom, angleTo, step, width, legs, from, to)];

    public static TofdSight Pair(double thickness, double? diameter)
    {
        var section = diameter is { } curved ? SectionRays.FromOutside(thickness, curved) : SectionRays.Flat(thickness);
        var pair = new PairGeometry(section, -24, 24, transmitsFromLeft: true);
        var directivity = new Directivity(6, isRound: true, 0.47, 0.397, 0.351, 0);
        return new TofdSight(
            pair, directivity, directivity, pair.LateralPath + 1.2, pair.PathAt(thickness - 0.8), Math.Pow(10, -12 / 20.0), 0, thickness);
    }

    private static CoverageInput TwoPasses(double thickness, double? diameter) => new(
        thickness, diameter, new(-15, 17, 0, thickness), new(-9, 8), new(-3, 4),
        [
            new(Surface.Outside, Fan(-20, 1, 45, 65, 5, Plain, 0b1), []),
            new(Surface.Inside, Fan(-18, 1, 40, 60, 5, Plain, 0b11), []),
        ],
        Wavelength / 4);
}
