using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Delays;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class DriftTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(15, 61.01), InlineData(30, 62.08)]
    public void A_warmed_shoe_turns_its_beam_as_the_reference_has_it(double drift, double expected)
    {
        // 60 deg transverse set at vw 2330, v 3240 m/s; drifts -1.9 and -0.5 m/s per K; wedge and part both warmed (worked out apart from this code, by Snell's law).
        var wedge = Given.TofdWedge with { Longitudinal = new Speed(2330), RefractedWave = Wave.Transverse };
        var steel = Given.Steel with { Transverse = new Speed(3240) };
        var section = Given.TofdSection(20, wedge: wedge);
        section = Given.Section(section.Examination with { Part = new Part(Curvature.Flat, steel, steel) }, 20);
        var beam = Given.Diffraction with { Scan = ScanKind.Fixed, From = 3, Wave = Wave.Transverse };
        var probe = section.Pass.Probes[0];
        var law = LawGeometry.Of(section, probe, beam)[0];

        var angle = TemperatureWork.AngleAt(section, probe, beam, law, 2330e3, (2330 - (1.9 * drift)) * 1e3, (3240 - (0.5 * drift)) * 1e3) / Degree;
        Checks.Record(
            "temperature", FormattableString.Invariant($"60 deg transverse, wedge -1.9 and part -0.5 m/s a kelvin, {drift} K warmer"), expected, angle, 0.006, "deg",
            "Snell's law, worked out apart from this code", Checks.Computed);
    }

    [Theory]
    [InlineData(45), InlineData(60), InlineData(70)]
    public void A_warmed_array_is_the_law_whose_delays_it_keeps(double angle)
    {
        // The warmed wedge's own laws are swept until one has the cold law's delays: that is where the beam now goes.
        var section = Given.ArraySection();
        var probe = section.Pass.Probes[0];
        var law = Given.LawAt(section, angle);
        var warm = probe with { Wedge = probe.Wedge with { Longitudinal = new Speed(Given.Polystyrene - (1.9 * 15)) } };
        var warmSection = Given.ArraySection(probe: warm);
        var cold = Slope(section, probe, angle);
        var (low, high) = (angle - 5, angle + 8);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (Slope(warmSection, warm, middle) < cold) low = middle;
            else high = middle;
        }

        var shifted = TemperatureWork.AngleAt(section, probe, Given.Sector, law, Given.Polystyrene * 1e3, (Given.Polystyrene - (1.9 * 15)) * 1e3, Given.Transverse * 1e3);
        Checks.Record(
            "temperature", FormattableString.Invariant($"an array set to {angle} deg, its wedge 15 K warmer"), low, shifted / Degree, 1e-6, "deg",
            "the angle of the warm wedge's own law that has the cold law's delays, found by bisection", Checks.Computed);
        shifted.Should().BeGreaterThan(angle * Degree, "a warmer wedge is slower, and its angle in the part grows");
    }

    [Fact]
    public void The_worst_law_and_drift_are_told()
    {
        var section = Given.ArraySection();
        var probe = section.Pass.Probes[0];
        var laws = LawGeometry.Of(section, probe, Given.Sector);
        var study = TemperatureWork.Of(section, probe, Given.Sector, laws);
        study.NotComputed.Should().BeNull();
        var worst = study.Permitted!.Value;
        worst.Law.Degrees.Should().Be(70);
        worst.PartDrifts.Should().BeFalse("a part that drifts alike takes some of it back");
        worst.Drift.Kelvins.Should().Be(15);
        study.OverSurface.Should().BeNull();
        study.SurfaceNotComputed.Should().NotBeEmpty();

        var dated = Given.Section(
            section.Examination with { BlockTemperature = new Temperature(20), SurfaceTemperature = new Band<Temperature>(new Temperature(5), new Temperature(40)) }, 20);
        TemperatureWork.Of(dated, probe, Given.Sector, laws).OverSurface!.Value.Drift.Kelvins.Should().Be(20);
        var unknown = probe with { Wedge = probe.Wedge with { Material = "plastic-of-the-house" } };
        TemperatureWork.Of(section, unknown, Given.Sector, laws).NotComputed.Should().Contain("plastic-of-the-house");
    }

    private static double Slope(TechLint.Ultrasonics.Studies.PassSection section, MountedProbe probe, double angle)
    {
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(Given.Deg(angle), Given.Deg(angle), Given.Deg(1)) };
        var delays = DelayWork.Of(section, probe, beam, LawGeometry.Of(section, probe, beam)[0]).Elements;
        return delays[15].Delay.Seconds - delays[0].Delay.Seconds;
    }
}
