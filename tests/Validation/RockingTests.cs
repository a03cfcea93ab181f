using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>Rock against soles of many points laid on circles of many points: none may lie in the metal.</summary>
public sealed class RockingTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(168.3, null, false), InlineData(500, null, false), InlineData(1400, null, false), InlineData(300, 400.0, false), InlineData(300, 250.0, true)]
    public void The_sole_rocks_until_its_edge_touches(double diameter, double? cut, bool hollow)
    {
        var wedge = Given.ArrayWedge with { ContourDiameter = cut is { } d ? Given.Mm(d) : null };
        var angle = Rocking.Of(Curvature.AcrossWeld, Given.Mm(diameter), hollow, wedge).Radians;
        angle.Should().BeGreaterThan(0);
        Touching(angle * 0.9).Should().BeLessThan(1 - 0.05, "short of it the edge hangs free");
        Checks.Record(
            "rock", FormattableString.Invariant($"what touches at full rock, as a share of half the sole: diameter {diameter} mm, sole {(cut is { } c ? $"cut for {c} mm" : "flat")}{(hollow ? ", inside" : "")}"),
            1, Touching(angle), 0.01, "-", "a sole of 40,001 points laid on the surface", Checks.Computed);

        // The sole turned by ψ about its middle, which stays over the axis, then lowered until its first point touches: which one, as a share of half the length.
        double Touching(double tilt)
        {
            var (radius, sole) = (diameter / 2, cut / 2);
            var (least, at) = (double.PositiveInfinity, 0.0);
            for (var k = -20000; k <= 20000; k++)
            {
                var x = 17.0 * k / 20000;
                var rise = sole is { } r ? (r - Math.Sqrt((r * r) - (x * x))) * (hollow ? 1 : -1) : 0;
                var (sine, cosine) = Math.SinCos(tilt);
                var (across, up) = ((x * cosine) + (rise * sine), (rise * cosine) - (x * sine));

                // Height over the surface right under the point.
                var under = hollow ? -Math.Sqrt((radius * radius) - (across * across)) : Math.Sqrt((radius * radius) - (across * across));
                if (up - under < least) (least, at) = (up - under, x);
            }

            return Math.Abs(at) / 17;
        }
    }

    [Theory]
    [InlineData(500, 500.0, false), InlineData(500, 400.0, false), InlineData(500, null, true), InlineData(500, 600.0, true)]
    public void A_sole_that_fits_or_rests_on_its_edges_stands_fast(double diameter, double? cut, bool hollow) =>
        Rocking.Of(Curvature.AcrossWeld, Given.Mm(diameter), hollow, Given.ArrayWedge with { ContourDiameter = cut is { } d ? Given.Mm(d) : null }).Degrees.Should().Be(0);

    [Fact]
    public void Sideways_it_is_the_width_that_rocks() =>
        Checks.Record(
            "rock", "tangent of the sideways rock: flat sole 24 mm wide, diameter 219.1 mm", 12 / 109.55,
            Math.Tan(Rocking.Of(Curvature.AlongWeld, Given.Mm(219.1), false, Given.ArrayWedge).Radians), 1e-9, "-", "a tangent laid at the sole's edge, by hand", Checks.Computed);

    [Theory]
    [InlineData(45, 800), InlineData(60, 1400)]
    public void A_flat_sole_s_law_turns_at_full_rock_as_snell_has_it(double angle, double diameter)
    {
        // Written out: the law's ray in couplant, the surface's normal where it lands, from the circle laid against the sole's edge.
        var section = Given.ArraySection(12, diameter);
        var law = Given.LawAt(section, angle);
        var shift = RockWork.Of(section, section.Pass.Probes[0], Given.Sector, law);
        shift.NotComputed.Should().BeNull();
        var radius = diameter / 2;
        var worst = new[] { -17.0, 0, 17 }.Select(contact =>
        {
            var inGap = Math.Asin(1482.38 / Given.Polystyrene * Math.Sin(law.Ray.Direction));
            var (u0, h) = (17 - 28 + (7.5 * 0.5 * Math.Cos(36 * Degree)), 5 + (7.5 * 0.5 * Math.Sin(36 * Degree)));
            var u = u0 + (h * Math.Tan(law.Ray.Direction));

            // March down the couplant until the circle about (contact, R) is met.
            var (low, high) = (0.0, 50.0);
            for (var k = 0; k < 100; k++)
            {
                var depth = (low + high) / 2;
                var x = u + (depth * Math.Tan(inGap)) - contact;
                if ((x * x) + ((radius - depth) * (radius - depth)) > radius * radius) low = depth;
                else high = depth;
            }

            var polar = Math.Atan2(u + (low * Math.Tan(inGap)) - contact, radius - low);
            return (Math.Asin(Given.Transverse / 1482.38 * Math.Sin(inGap + polar)) / Degree) - angle;
        }).MaxBy(Math.Abs);
        Checks.Record(
            "rock", FormattableString.Invariant($"turn of a {angle} deg beam at full rock, flat sole, diameter {diameter} mm"), worst, shift.AngleShift!.Value.Degrees, 1e-5, "deg",
            "Snell's law at a circle laid against the sole's edge, marched by bisection", Checks.Computed);
    }

    [Fact]
    public void Tipped_sideways_a_beam_squints_and_keeps_its_angle_nearly()
    {
        var examination = Given.ArraySection().Examination with { Part = new Part(Curvature.AlongWeld, Given.Steel, Given.Steel) };
        var section = Given.Section(examination, 12, 508);
        var law = Given.LawAt(section, 55);
        var shift = RockWork.Of(section, section.Pass.Probes[0], Given.Sector, law);

        // Snell's law in space by least time: couplant above, steel below, the plane between them leaning by the rock.
        var rock = Rocking.Of(Curvature.AlongWeld, Given.Mm(508), false, section.Pass.Probes[0].Wedge).Radians;
        var inGap = Math.Asin(1482.38 / Given.Polystyrene * Math.Sin(law.Ray.WedgeAngle));
        var (sine, cosine) = Math.SinCos(rock);
        var along = (X: -Math.Cos(inGap) * sine * cosine, Y: Math.Sin(inGap));
        var inSurface = (Side: -Math.Cos(inGap) * sine, Forward: along.Y);
        var ratio = Given.Transverse / 1482.38;
        var theta = Math.Asin(ratio * Math.Sqrt((inSurface.Side * inSurface.Side) + (inSurface.Forward * inSurface.Forward)));
        const string Source = "Snell's law in space at a leaning plane";
        Checks.Record(
            "rock", "turn of a 55 deg beam tipped sideways, flat sole, diameter 508 mm", (theta / Degree) - 55, shift.AngleShift!.Value.Degrees, 1e-7, "deg", Source, Checks.Computed);
        Checks.Record(
            "rock", "squint of a 55 deg beam tipped sideways, flat sole, diameter 508 mm", Math.Asin(ratio * Math.Abs(inSurface.Side)) / Degree, shift.Squint!.Value.Degrees, 1e-7, "deg",
            Source, Checks.Computed);
        shift.Squint.Value.Degrees.Should().BeGreaterThan(1);
    }
}
