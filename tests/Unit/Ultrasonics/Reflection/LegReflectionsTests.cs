using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Reflection;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Reflection;

public sealed class LegReflectionsTests
{
    [Theory]
    [InlineData(31, true), InlineData(34, false), InlineData(45, false), InlineData(60, false)]
    public void A_second_leg_is_converted_where_the_first_meets_the_wall_short_of_the_critical_angle(double incidence, bool converted)
    {
        var legs = LegReflections.Of([Leg(1, incidence), Leg(2, incidence)], Wave.Transverse, Given.Steel);
        legs.Select(leg => leg.IsModeConverted).Should().Equal(false, converted);
        legs[0].Reflected!.Value.Other.Should().Be(Wave.Longitudinal);
        legs[0].Reflected!.Value.OtherAngle.HasValue.Should().Be(converted, "beyond the critical angle none leaves");
    }

    [Fact]
    public void A_longitudinal_beam_loses_most_of_itself_at_the_wall()
    {
        var legs = LegReflections.Of([Leg(1, 60), Leg(2, 60)], Wave.Longitudinal, Given.Steel);
        legs[1].IsModeConverted.Should().BeTrue();
        legs[0].Reflected!.Value.Other.Should().Be(Wave.Transverse);
        (legs[0].Reflected!.Value.Kept.Percent + legs[0].Reflected!.Value.Converted.Percent).Should().Be(100);
    }

    [Fact]
    public void What_is_no_mirror_or_has_no_speed_says_so()
    {
        LegReflections.Of([Leg(1, 45) with { EndsOnReinforcement = true }], Wave.Transverse, Given.Steel)[0].NotReflected.Should().Contain("reinforcement");
        LegReflections.Of([Leg(1, 45)], Wave.Transverse, Given.Steel with { Longitudinal = null })[0].NotReflected.Should().Contain("speed");
    }

    [Fact]
    public void From_inside_the_outer_wall_is_met_steeper_and_may_convert()
    {
        // sin i = (Ri/Ro) sin θ: 40 deg on a thick pipe comes down to 31 deg.
        var probe = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { ContourDiameter = Given.Mm(400) } };
        var section = Given.ArraySection(50, 500, Surface.Inside, probe);
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(Given.Deg(40), Given.Deg(40), Given.Deg(1)) };
        var law = LawStudies.Of(section, probe, beam, LawGeometry.Of(section, probe, beam))[0];
        law.Legs[0].Incidence.Degrees.Should().BeApproximately(Math.Asin(0.8 * Math.Sin(40 * Math.PI / 180)) * 180 / Math.PI, 1e-9);
        law.Legs[1].IsModeConverted.Should().BeTrue();
    }

    [Theory]
    [InlineData(double.NaN, 5920, 3255), InlineData(-1, 5920, 3255), InlineData(91, 5920, 3255), InlineData(45, 3255, 5920), InlineData(45, 5920, 0), InlineData(45, double.NaN, 3255)]
    public void What_no_solid_does_is_not_answered(double incidence, double longitudinal, double transverse) =>
        FreeSurface.Of(Wave.Transverse, new Angle(incidence), new Speed(longitudinal), new Speed(transverse)).Should().BeNull();

    private static LegStudy Leg(int leg, double incidence) => new(leg, default, default, default, Given.Deg(incidence), default, false);
}
