using FluentAssertions;
using MathNet.Numerics.Optimization;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class RefractionTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string> Refractions => CheckValue.Ids("refraction");

    public static TheoryData<string> CriticalAngles => CheckValue.Ids("critical-angle");

    [Theory, MemberData(nameof(Refractions))]
    public void A_refracted_angle_agrees_with_its_source(string id)
    {
        var row = CheckValue.Of(id);
        var incidence = row.Inputs.ContainsKey("sine") ? Angle.FromRadians(Math.Asin(row["sine"])) : new Angle(row["incidence"]);
        var angle = Refraction.Through(incidence, new Speed(row["from"]), new Speed(row["to"]));
        if (row.Inputs.ContainsKey("warmed-to")) angle = Refraction.Through(angle!.Value, new Speed(row["warmed-to"]), new Speed(row["warmed-from"]));
        row.Holds(angle!.Value.Degrees);
    }

    [Theory, MemberData(nameof(CriticalAngles))]
    public void A_critical_angle_agrees_with_its_source(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(Refraction.CriticalAngle(new Speed(row["from"]), new Speed(row["to"]))!.Value.Degrees);
    }

    [Theory]
    [InlineData(10), InlineData(40), InlineData(55), InlineData(70), InlineData(85)]
    public void A_flat_sole_refracts_by_least_time(double degrees)
    {
        var section = SectionRays.Flat(20);
        var sole = SoleOn(section, contoured: false);
        sole.TryAim(-4, 9, degrees * Degree, Given.Transverse * 1000, out var ray).Should().BeTrue();
        section.TryReach(degrees * Degree, 20, 1, out var advance, out _);

        var fastest = Fastest(ray.ExitArc, u => Distance((-4, -9), (u, 0)) / Given.Polystyrene + (Distance((u, 0), (ray.ExitArc + advance, 20)) / Given.Transverse));

        Records(FormattableString.Invariant($"exit arc, flat part, {degrees} deg"), fastest, ray.ExitArc);
    }

    [Theory]
    [InlineData(45, 80, false), InlineData(60, 80, false), InlineData(45, 203.2, false), InlineData(70, 700, false)]
    [InlineData(45, 203.2, true), InlineData(60, 700, true)]
    public void A_contoured_sole_refracts_by_least_time(double degrees, double radius, bool inside)
    {
        const double Wall = 8;
        var section = inside ? SectionRays.FromInside(Wall, 2 * (radius + Wall)) : SectionRays.FromOutside(Wall, 2 * radius);
        var frame = new SectionFrame(section);
        var sole = SoleOn(section, contoured: true);
        sole.TryAim(-4, 9, degrees * Degree, Given.Transverse * 1000, out var ray).Should().BeTrue();

        // Any point of the ray in the part serves as its end.
        section.TryReach(degrees * Degree, 5, 1, out var advance, out _).Should().BeTrue();
        var end = frame.Place(ray.ExitArc + advance, 5);
        var fastest = Fastest(ray.ExitArc, arc =>
            (Distance((-4, -9), frame.Place(arc, 0)) / Given.Polystyrene) + (Distance(frame.Place(arc, 0), end) / Given.Transverse));

        Records(
            FormattableString.Invariant($"exit arc, sole cut to fit, radius {radius} mm from {(inside ? "inside" : "outside")}, {degrees} deg"), fastest, ray.ExitArc);
        ray.WedgePath.Should().BeApproximately(Distance((-4, -9), frame.Place(ray.ExitArc, 0)), 1e-9);
    }

    [Theory]
    [InlineData(45, 300, 26), InlineData(60, 300, 26), InlineData(60, 700, 34), InlineData(50, 120, 12)]
    public void A_flat_sole_on_a_curve_refracts_by_least_time_across_its_gap(double degrees, double radius, double length)
    {
        var section = SectionRays.FromOutside(8, 2 * radius);
        var frame = new SectionFrame(section);
        var sole = SoleOn(section, contoured: false, length);
        sole.TryAim(-5, 6, degrees * Degree, Given.Transverse * 1000, out var ray).Should().BeTrue();
        section.TryReach(degrees * Degree, 5, 1, out var advance, out _).Should().BeTrue();
        var end = frame.Place(ray.ExitArc + advance, 5);
        var atSole = -5 + (6 * Math.Tan(ray.Direction));

        // Time is stationary over both crossings: hold one at the ray's place and let the other find its own.
        var exit = frame.Place(ray.ExitArc, 0);
        var fastestAtSole = Fastest(atSole, u => (Distance((-5, -6), (u, 0)) / Given.Polystyrene) + (Distance((u, 0), exit) / Couplant));
        var fastestAtSurface = Fastest(
            ray.ExitArc, arc => (Distance((atSole, 0), frame.Place(arc, 0)) / Couplant) + (Distance(frame.Place(arc, 0), end) / Given.Transverse));
        var at = FormattableString.Invariant($"flat sole over its gap, radius {radius} mm, sole {length} mm, {degrees} deg");
        Records($"place on the sole, {at}", fastestAtSole, atSole);
        Records($"exit arc, {at}", fastestAtSurface, ray.ExitArc, 1e-4);
    }

    private static void Records(string quantity, double expected, double got, double tolerance = 1e-5) => Checks.Record(
        "least time", quantity, expected, got, tolerance, "mm", "travel time minimised by MathNet.Numerics, golden section", Checks.Computed);

    private static double Couplant => BuiltInMaterials.Water.Longitudinal.MetresPerSecond;

    private static Sole SoleOn(SectionRays section, bool contoured, double length = 34) =>
        new(length, contoured, section, Given.Polystyrene * 1000, Couplant * 1000);

    private static double Distance((double X, double Z) a, (double X, double Z) b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Z - b.Z) * (a.Z - b.Z)));

    /// <summary>Golden section finds a minimum to about the root of machine precision: its time is scaled up, the place good to 1e-5 mm.</summary>
    private static double Fastest(double near, Func<double, double> time) =>
        GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(time), near - 3, near + 2, 1e-9, 2000).MinimizingPoint;
}
