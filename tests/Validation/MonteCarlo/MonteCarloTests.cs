using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation.MonteCarlo;

/// <summary>Coverage of whole examinations against points thrown at random, each judged by <see cref="PlainSight"/>: within three standard deviations of the throw.</summary>
public sealed class MonteCarloTests
{
    private const double Deviations = 3;

    private static readonly Beam Sweep = Given.Sector with { Angles = new AngleSweep(new Angle(42), new Angle(66), new Angle(4)) };

    public static TheoryData<string, double, double, string, string, double, int> Examinations => new()
    {
        // name, thickness, outside diameter (0 flat), surface, legs, window, points
        { "plate, both sides, both legs", 20, 0, "outside", "1 2", 48, 10_000 },
        { "plate, first leg alone", 16, 0, "outside", "1", 200, 10_000 },
        { "plate, window that ends early", 25, 0, "outside", "1 2", 45, 10_000 },
        { "plate, third leg over cap and root", 10, 0, "outside", "3", 200, 10_000 },
        { "plate, from inside", 18, 0, "inside", "1 2", 70, 10_000 },
        { "seam, outside, both legs", 16, 350, "outside", "1 2", 40, 4_000 },
        { "seam, outside, second leg over the root", 14, 273, "outside", "2", 52, 4_000 },
        { "seam, outside, window", 20, 500, "outside", "1 2", 55, 4_000 },
        { "seam, inside, both legs", 15, 400, "inside", "1 2", 200, 4_000 },
        { "seam, inside, second leg under the cap", 12, 600, "inside", "2", 200, 4_000 },
    };

    [Theory]
    [MemberData(nameof(Examinations))]
    public void Rows_agree_with_points_thrown_at_random(string name, double thickness, double diameter, string surface, string legs, double window, int points)
    {
        double? outside = diameter > 0 ? diameter : null;
        var examination = ExaminationOf(thickness, outside, surface == "inside" ? Surface.Inside : Surface.Outside, [.. legs.Split(' ').Select(int.Parse)], window);
        var coverage = new Study(examination).At(new Length(thickness), outside is { } known ? new Length(known) : null).Coverage;
        coverage.NotComputed.Should().BeNull();

        // The volume by the format's words: from the toes, and as much beside them as is stated; the cap is the wider.
        var arc = surface == "inside" && outside is { } curved ? curved / (curved - (2 * thickness)) : 1;
        var (from, to) = (-9 - (8 * arc), 11 + (8 * arc));
        var sight = new PlainSight(examination, thickness, outside);
        var random = new Random(20261125);
        var seen = 0;
        for (var point = 0; point < points; point++)
        {
            var y = from + (random.NextDouble() * (to - from));
            if (sight.Sees(y, random.NextDouble() * thickness)) seen++;
        }

        var share = (double)seen / points;
        share.Should().BeInRange(0.05, 0.995, $"{name}: what is all or nothing shows nothing");
        var deviation = 100 * Math.Sqrt(share * (1 - share) / points);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{name}: {100 * share:F2} +- {deviation:F2}, rows {coverage.Volume.Percent:F2}"));
        Checks.Record(
            "coverage", $"volume seen, {name}", 100 * share, coverage.Volume.Percent, Deviations * deviation, "%",
            $"{points} points thrown at random, ray by ray; three standard deviations", Checks.Computed);
    }

    private static Examination ExaminationOf(double thickness, double? outside, Surface surface, EquatableArray<int> legs, double window)
    {
        var wedge = outside is { } diameter
            ? Given.ArrayWedge with { ContourDiameter = new Length(surface == Surface.Outside ? diameter : diameter - (2 * thickness)) }
            : Given.ArrayWedge;
        MountedProbe Probe(Side side, double offset) => Given.ArrayProbe(side, offset) with { Wedge = wedge };
        var beam = Sweep with { Legs = legs, PathWindow = new Band<Length>(new Length(0), new Length(window)) };
        var pass = Given.Pass(new(Probe(Side.Left, 14 + (0.6 * thickness)), Probe(Side.Right, 12 + (0.6 * thickness))), beam, beam with { Id = "right", From = 2 });
        var plain = Given.Examination(pass with { ScanningSurface = surface }, outside is null ? Curvature.Flat : Curvature.AcrossWeld);
        var cap = new Reinforcement(new Length(20), new Length(2), new Length(1));
        var root = new Reinforcement(new Length(5), new Length(1), new Length(0));
        return plain with
        {
            Weld = plain.Weld with { Cap = cap, Root = root }, Volume = plain.Volume with { BesideWeld = new Length(8) },
            Thickness = new(new Length(thickness), new Length(thickness)),
            OutsideDiameter = outside is { } known ? new(new Length(known), new Length(known)) : null,
        };
    }
}
