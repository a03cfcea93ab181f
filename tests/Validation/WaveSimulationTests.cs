using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>Beams as rays against elastic waves. What the tolerances leave room for is written down in the page's section of disagreements.</summary>
public sealed class WaveSimulationTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>mm: 3.255 mm/us at 5 MHz.</summary>
    private const double Wavelength = 0.651;

    private const double Density = 7.85;

    [Theory]
    [InlineData(45), InlineData(60)]
    public void A_steered_beam_goes_where_its_law_says(double angle)
    {
        const int Elements = 16;
        var slope = Given.ArrayWedge.ArraySlope!.Value.Radians;
        var first = Given.ArrayWedge.FirstElement!.Value;
        var half = (Elements - 1) * Given.Array.Pitch.Millimetres / 2;
        var simulation = WaveSimulation.Of(FormattableString.Invariant($"steered-beam-{angle}"), new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["angle-deg"] = angle, ["frequency-MHz"] = Given.Array.Frequency.Megahertz, ["elements"] = Elements, ["pitch-mm"] = Given.Array.Pitch.Millimetres,
            ["element-size-mm"] = Given.Array.ElementSize.Millimetres, ["slope-deg"] = Given.ArrayWedge.ArraySlope!.Value.Degrees,
            ["centre-height-mm"] = first.Height.Millimetres + (half * Math.Sin(slope)),
            ["wedge-longitudinal-m/s"] = Given.Polystyrene, ["wedge-transverse-m/s"] = 1155, ["wedge-density-g/cm3"] = 1.05,
            ["part-longitudinal-m/s"] = Given.Longitudinal, ["part-transverse-m/s"] = Given.Transverse, ["part-density-g/cm3"] = Density,
            ["measured-from-mm"] = 20, ["measured-to-mm"] = 40, ["pulse-half-width-us"] = 0.2,
        });
        var law = Given.LawAt(Given.ArraySection(60), angle).Study;
        var simulated = simulation["beam-angle-deg", 0.15];
        Checks.Record("wave simulation", FormattableString.Invariant($"angle of a beam steered to {angle} deg"), simulated, law.Angle.Degrees, 0.5, "deg", simulation.Source, Checks.Computed);

        // Where the axis is at the middle of the measured path: exit point and angle together.
        var depth = 30 * Math.Cos(angle * Degree);
        var ahead = first.BehindFront.Millimetres - (half * Math.Cos(slope)) - law.ExitBehindFront.Millimetres;
        Checks.Record(
            "wave simulation", FormattableString.Invariant($"place of that beam's axis at a path of 30 mm, {angle} deg"),
            simulation["exit-ahead-of-array-centre-mm", 0.15] + (depth * Math.Tan(simulated * Degree)), ahead + (depth * Math.Tan(law.Angle.Radians)), Wavelength, "mm",
            simulation.Source, Checks.Computed);
    }

    [Fact]
    public void A_beam_bounces_off_the_bore_as_its_ray_does()
    {
        const double Angle = 45;
        const double Wall = 20;
        const double Diameter = 200;
        var simulation = WaveSimulation.Of("curved-bounce", new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["angle-deg"] = Angle, ["frequency-MHz"] = 5, ["outside-diameter-mm"] = Diameter, ["wall-mm"] = Wall, ["waist-mm"] = 2.5,
            ["part-longitudinal-m/s"] = Given.Longitudinal, ["part-transverse-m/s"] = Given.Transverse, ["part-density-g/cm3"] = Density, ["pulse-half-width-us"] = 0.2,
        });
        var section = SectionRays.FromOutside(Wall, Diameter);
        section.TryReach(Angle * Degree, Wall, 1, out var half, out _);
        section.TryReach(Angle * Degree, 0, 2, out var full, out var path);
        Records("arc at which the beam meets the bore (OD 200 mm, wall 20 mm, 45 deg)", "bore-arc-going-down-mm", half, 0.2, "mm");
        Records("its angle to the bore's normal", "bore-angle-going-down-deg", section.IncidenceAtEndOf(Angle * Degree, 1) / Degree, 0.5, "deg");
        Records("arc at which the reflected beam leaves the bore", "bore-arc-coming-back-mm", half, 0.2, "mm");
        Records("arc at which the wave front is back at the outside at its launch angle", "return-arc-of-front-mm", full, Wavelength, "mm");
        Records("sound path of both legs, from the time of that arrival", "return-path-of-front-mm", path, Wavelength, "mm");

        void Records(string quantity, string what, double got, double tolerance, string unit) =>
            Checks.Record("wave simulation", quantity, simulation[what, 0.15], got, tolerance, unit, simulation.Source, Checks.Computed);
    }
}
