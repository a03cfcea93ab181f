using System.Numerics;
using FluentAssertions;
using MathNet.Numerics.Optimization;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>The simulated field and the share of the volume it makes against <see cref="SummedField"/>, which knows no rays, with the same transmission. Both are right to the same order of wavelength over size; they part by up to 0.12 of the maximum on the flanks.</summary>
public sealed class FieldRefereeTests
{
    private const string Topic = "simulated field";
    private const string Summed = "Kirchhoff sum over the interface, line sources, no rays";
    private const double Degree = Math.PI / 180;
    private const int Elements = 16;
    private const double Slope = 36 * Degree;

    /// <summary>Long across the plane of incidence, so that the field is the two-dimensional one.</summary>
    private static readonly Transducer Long = Given.Array with { Elevation = Given.Mm(200) };

    [Fact]
    public void The_share_within_6_decibels_of_a_plate_is_that_of_summed_fields()
    {
        const double thickness = 20, offset = 26;
        var probe = Given.ArrayProbe() with { Transducer = Long };
        var examination = Given.Examination(Given.Pass(new(probe), Given.Sector));
        var field = FieldCoverage.BeamField.AllOf(Given.Section(examination, thickness)).Beams.Single();

        // 40 to 70 deg are asked for; the wedge could do 34 to 80. Longitudinal waves go along below 33.4 deg.
        double[] own = [.. Enumerable.Range(40, 31)];
        double[] steered = [.. Enumerable.Range(17, 24).Select(half => 2.0 * half)];
        double[] angles = [.. own, .. steered];
        var (frequencies, powers) = Pulse(5, 0.7);
        var (sources, elementOf) = Sources(6);
        var sum = new SummedField(sources, [.. angles.Select(angle => Fired(angle, elementOf))], SummedField.Plane(-17, 7, 0.04), frequencies);
        double Decibels(Complex[] lines) => 10 * Math.Log10(lines.Select((value, line) => powers[line] * Math.Pow(value.Magnitude, 4)).Sum());

        const int farthest = 118;
        var (ofOwn, ofWedge, each) = (new double[farthest], new double[farthest], new double[own.Length, farthest]);
        for (var path = 1; path < farthest; path++)
        {
            (ofOwn[path], ofWedge[path]) = (double.NegativeInfinity, double.NegativeInfinity);
            for (var law = 0; law < angles.Length; law++)
            {
                var (exit, theta) = (Exit(angles[law]), angles[law] * Degree);
                var level = Decibels(sum.At(exit + (path * Math.Sin(theta)), path * Math.Cos(theta), law)[law]);
                if (law >= own.Length) ofWedge[path] = Math.Max(ofWedge[path], level);
                else each[law, path] = level;
                if (law < own.Length && path * Math.Cos(theta) <= 2 * thickness) ofOwn[path] = Math.Max(ofOwn[path], level);
            }
        }

        var (inside, agreeing, places) = (0, 0, 0);
        for (var y = -9.5; y < 10; y++)
        {
            for (var z = 0.5; z < thickness; z++)
            {
                var seen = false;
                foreach (var down in new[] { z, (2 * thickness) - z })
                {
                    var forward = y + offset + 17;
                    var path = PathOfElement(Elements / 2, forward, down);
                    var (low, share) = ((int)path, path - (int)path);
                    double Between(Func<int, double> levels) => levels(low) + (share * (levels(low + 1) - levels(low)));
                    var here = sum.At(forward, down);
                    for (var law = 0; law < own.Length && !seen; law++)
                    {
                        var measure = Math.Max(Math.Max(Between(at => ofOwn[at]), Between(at => each[law, at])), Between(at => ofWedge[at]));
                        seen = Decibels(here[law]) >= measure - 6;
                    }
                }

                places++;
                if (seen) inside++;
                field.Forget();
                if (seen == (field.SightOf(y, z, -6) == FieldCoverage.Sight.Full)) agreeing++;
            }
        }

        Checks.Record(Topic, "share of a plate within 6 dB, 40 to 70 deg from one side, 20 mm", 100.0 * inside / places,
            FieldCoverage.Of(examination, Given.Mm(thickness), null).Within.Percent, 3, "%", Summed, Checks.Computed);
        Checks.Record(Topic, "places of that plate told alike", 100, 100.0 * agreeing / places, 4, "%", Summed, Checks.Computed);
    }

    [Theory]
    [InlineData(false, 1, 14.0, 45.0), InlineData(false, 2, 6.0, 45.0), InlineData(false, 1, 16.0, 60.0)]
    [InlineData(true, 1, 14.0, 45.0), InlineData(true, 2, 6.0, 45.0), InlineData(true, 1, 10.0, 55.0)]
    public void Across_the_beam_the_field_is_the_summed_one(bool curved, int leg, double depth, double degrees)
    {
        const double thickness = 20, radius = 150;
        var wedge = Given.ArrayWedge with { ContourDiameter = curved ? Given.Mm(2 * radius) : null };
        var probe = Given.ArrayProbe() with { Transducer = Long with { Bandwidth = null }, Wedge = wedge };
        var angle = new Angle(degrees);
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(angle, angle, new Angle(1)) };
        var section = Given.Section(
            Given.Examination(Given.Pass(new(probe), beam), curved ? Curvature.AcrossWeld : Curvature.Flat), thickness, curved ? 2 * radius : null);
        var law = LawGeometry.Of(section, probe, beam)[0];
        var (source, reason) = FieldSource.Of(section, probe, beam, [law]);
        reason.Should().BeNull();
        var (field, sum) = (source!.LawOf(law), new FieldSum(source));

        // The law's steering in the wedge is told apart here: it is the field that is compared.
        var (sources, elementOf) = Sources(6);
        double[] fired = [.. elementOf.Select(element => FiredAt(element, law.Steering + Slope))];
        var outer = curved ? SummedField.Circle(radius, radius, -0.12, 0.06, 0.04, outwards: false) : SummedField.Plane(-17, 7, 0.04);
        var referee = new SummedField(sources, [fired], outer, [5]);
        if (leg == 2) referee = referee.Mirrored(curved
            ? SummedField.Circle(radius, radius - thickness, -0.1, 0.45, 0.1, outwards: true)
            : [.. SummedField.Plane(-17, 70, 0.1).Select(point => point with { Z = thickness, NormalZ = -1 })]);
        double Referee(double forward)
        {
            var (x, z) = curved ? ((radius - depth) * Math.Sin(forward / radius), radius - ((radius - depth) * Math.Cos(forward / radius))) : (forward, depth);
            return referee.At(x, z)[0][0].Magnitude;
        }

        double Got(double forward)
        {
            sum.TryMove(forward, depth, leg).Should().BeTrue();
            return sum.Of(field).OneWay;
        }

        section.Rays.TryReach(angle.Radians, depth, leg, out var advance, out _).Should().BeTrue();
        var places = Enumerable.Range(-60, 121).Select(step => law.Ray.ExitArc + advance + (step * 0.1)).ToArray();
        var (got, expected) = (places.Select(Got).ToArray(), places.Select(Referee).ToArray());
        var (most, mostExpected) = (got.Max(), expected.Max());
        var name = FormattableString.Invariant($"{(curved ? "contoured sole, radius 150 mm" : "plate")}, {degrees} deg, leg {leg}, depth {depth} mm: ");
        var off = got.Zip(expected, (one, other) => Math.Abs((one / most) - (other / mostExpected))).Max();
        Checks.Record(Topic, name + "greatest difference across 12 mm, of the maximum", 0, off, 0.12, "-", Summed, Checks.Computed);
        Checks.Record(
            Topic, name + "place of the maximum from the axis", places[Array.IndexOf(expected, mostExpected)] - places[60], places[Array.IndexOf(got, most)] - places[60], 0.8, "mm",
            Summed, Checks.Computed);
        double Width(double[] levels) => 0.1 * levels.Count(level => level >= Math.Sqrt(0.5) * levels.Max());
        Checks.Record(Topic, name + "echo -6 dB width along the surface", Width(expected), Width(got), 0.13 * Width(expected), "mm", Summed, Checks.Computed);
    }

    private static double PathOfElement(int element, double forward, double down)
    {
        var (u, height) = ElementAt(element);
        double Time(double exit) => (double.Hypot(exit - u, height) / SummedField.Wedge) + (double.Hypot(forward - exit, down) / SummedField.Part);
        var least = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Time), u, u + 60, 1e-5, 200).MinimizingPoint;
        return double.Hypot(forward - least, down);
    }

    private static (double U, double Height) ElementAt(double index) => (-11 + (index * 0.5 * Math.Cos(Slope)), 5 + (index * 0.5 * Math.Sin(Slope)));

    private static double Incidence(double degrees) => Math.Asin(SummedField.Wedge / SummedField.Part * Math.Sin(degrees * Degree));

    private static double Exit(double degrees)
    {
        var (u, height) = ElementAt((Elements - 1) / 2.0);
        return u + (height * Math.Tan(Incidence(degrees)));
    }

    private static double[] Fired(double degrees, int[] elementOf) => [.. elementOf.Select(element => FiredAt(element, Incidence(degrees)))];

    /// <summary>A straight wave front in the wedge, µs.</summary>
    private static double FiredAt(int element, double incidence)
    {
        var (u, height) = ElementAt(element);
        return ((u * Math.Sin(incidence)) - (height * Math.Cos(incidence))) / SummedField.Wedge;
    }

    private static (List<(double X, double Z)> Sources, int[] ElementOf) Sources(int perElement)
    {
        const double size = 0.45, pitch = 0.5;
        var places = new List<(double, double)>();
        var elements = new List<int>();
        for (var element = 0; element < Elements; element++)
        {
            for (var part = 0; part < perElement; part++)
            {
                var (u, height) = ElementAt(element + (((((part + 0.5) / perElement) - 0.5) * size) / pitch));
                places.Add((u, -height));
                elements.Add(element);
            }
        }

        return (places, [.. elements]);
    }

    private static (double[] Frequencies, double[] Powers) Pulse(double frequency, double bandwidth)
    {
        var sigma = bandwidth * frequency / Math.Sqrt(8 * Math.Log(2));
        double[] lines = [.. Enumerable.Range(-10, 21).Select(index => frequency + (index * sigma / 4))];
        return (lines, [.. lines.Select(line => Math.Exp(-Math.Pow((line - frequency) / sigma, 2)))]);
    }
}
