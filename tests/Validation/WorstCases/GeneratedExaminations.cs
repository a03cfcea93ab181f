using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>
/// Examinations of many kinds, the same for the same number on every machine: plates, girth welds and longitudinal seams; single and double V; one side or
/// both; sectorial, linear and fixed beams, with and without a diffraction pair; from outside and from inside. Offsets are those of a careful author and of a careless one.
/// </summary>
internal static class GeneratedExaminations
{
    public static Examination Of(int number)
    {
        var random = new Random(unchecked((number * 7919) + 20261125));
        var curvature = (number % 5) switch
        {
            0 or 1 => Curvature.Flat,
            2 or 3 => Curvature.AlongWeld,
            _ => Curvature.AcrossWeld,
        };
        var least = Math.Round(Between(random, 6, 30), 1);
        var most = number % 4 == 0 ? least : Math.Round(least * Between(random, 1.05, 1.8), 1);
        var doubled = least > 14 && random.NextDouble() < 0.5;
        var twoSided = random.NextDouble() < 0.7;
        var inside = curvature == Curvature.AcrossWeld && random.NextDouble() < 0.25;
        var hasPair = twoSided && random.NextDouble() < 0.4;
        var middle = (least + most) / 2;
        var preparation = new Preparation(
            doubled ? PreparationShape.DoubleV : PreparationShape.SingleV, Surface.Outside, Side.Left,
            Groove.None with { FaceAngle = new Angle(30) }, Groove.None with { FaceAngle = new Angle(30) }, Mm(2), Mm(random.Next(0, 3)), default, default, [], []);
        var opening = (doubled ? middle / 2 : middle) * 1.2;
        var weld = new WeldSection(
            preparation,
            random.NextDouble() < 0.85 ? new Reinforcement(Mm(Math.Round(opening + 4)), Mm(2), Mm(random.Next(-1, 2))) : null,
            random.NextDouble() < 0.85 ? new Reinforcement(Mm(doubled ? Math.Round(opening + 3) : 6), Mm(1.5), default) : null, null);
        Band<Length>? diameters = curvature switch
        {
            Curvature.Flat => null,
            Curvature.AlongWeld => new(Mm(323.9), Mm(323.9)),
            _ => DiametersOf(random, most),
        };
        var offset = (middle * Between(random, 0.7, 1.3)) + Between(random, 0, 6);
        var probes = new List<MountedProbe> { Given.ArrayProbe(Side.Left, Math.Round(offset, 1)) };
        var beams = new List<Beam> { BeamOf(random, "left", 1) };
        if (twoSided)
        {
            probes.Add(Given.ArrayProbe(Side.Right, Math.Round(offset + (random.NextDouble() < 0.3 ? Between(random, -4, 4) : 0), 1)));
            beams.Add(beams[0] with { Id = "right", From = 2 });
        }

        if (hasPair)
        {
            var half = Math.Round((middle * 1.155) + 7, 1);
            probes.Add(Given.TofdProbe(Side.Left, half - 7));
            probes.Add(Given.TofdProbe(Side.Right, half - 7));
            beams.Add(Given.Diffraction);
        }

        var tolerance = new PositioningTolerance(Mm(Math.Round(Between(random, 0, 2), 1)), new Angle(Math.Round(Between(random, 0, 3), 1)));
        var pass = new Pass("setup", null, inside ? Surface.Inside : Surface.Outside, tolerance, [.. probes], [.. beams], null);
        if (number % 3 == 0) weld = weld with { Preparation = weld.Preparation with { Misalignment = Mm(number % 2 == 0 ? 1 : 2) } };
        return new Examination(
            new Part(curvature, Given.Steel, Given.Steel), weld, new ExaminedVolume(Mm(random.Next(5, 11)), new Depth(0, true), new Depth(100, true)),
            new(Mm(least), Mm(most)), diameters, new Level(-12), [pass])
        {
            VelocityTolerance = new Share(random.Next(0, 3)),
            BlockToPart = new TemperatureDifference(random.NextDouble() < 0.25 ? 15 : 0),
        };
    }

    private static Band<Length> DiametersOf(Random random, double wall)
    {
        var from = Math.Round(Math.Max(wall * Between(random, 12, 40), 220));
        return random.Next(3) switch
        {
            0 => new(Mm(from), Mm(from)),
            1 => new(Mm(from), Mm(Math.Round(from * Between(random, 1.1, 2.5)))),
            _ => new(Mm(from), null),
        };
    }

    private static Beam BeamOf(Random random, string id, int station)
    {
        EquatableArray<int> legs = random.Next(8) switch { 0 => [1], 1 or 2 => [1, 2, 3], _ => [1, 2] };
        var window = new Band<Length>(Mm(0), Mm(random.NextDouble() < 0.3 ? random.Next(60, 110) : 250));
        var focus = random.NextDouble() < 0.2 ? new Focus(FocusKind.Path, Mm(40)) : default;
        var beam = Given.Sector with { Id = id, From = station, Legs = legs, PathWindow = window, Focus = focus };
        return random.Next(5) switch
        {
            0 => beam with { Scan = ScanKind.Linear, Angles = Sweep(random.Next(50, 61), 0), Aperture = new Aperture(1, 12, 32, 1) },
            1 => beam with { Angles = Sweep(45, 20), Aperture = new Aperture(1, 16, 16, 1) },
            _ => beam with { Angles = Sweep(random.Next(38, 42), random.Next(26, 33)) },
        };
    }

    private static AngleSweep Sweep(int from, int span) => new(new Angle(from), new Angle(from + span), new Angle(1));

    private static double Between(Random random, double from, double to) => from + (random.NextDouble() * (to - from));

    private static Length Mm(double value) => new(value);
}
