using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>What every practitioner knows (common practice, no source), as far as it is physics. Fit of frames and probe counts is not.</summary>
public sealed class FactsOfTheTradeTests
{
    [Fact]
    public void The_index_offset_is_reset_when_the_thickness_changes()
    {
        // At one offset the beam that served the root of one wall misses that of another by the difference times tan θ.
        double RootY(double wall) => Given.LawAt(Given.ArraySection(wall), 60).Study.Legs[0].EndY.Millimetres;
        Checks.Record(
            "trade", "how far a 60 deg beam misses the root when the wall grows from 18 to 25 mm", 7 * Math.Sqrt(3), RootY(25) - RootY(18), 1e-9, "mm",
            "every practitioner: the offset is reset for another wall, by the difference times the tangent", Checks.CommonPractice);
    }

    [Fact]
    public void A_pass_faster_than_the_pulses_loses_lines()
    {
        // At the speed at most a pulse falls on every increment: one more law a position, and it no longer does.
        AcquisitionStudy StudyOf(double to) => new Study(Given.Examination(
            Given.Pass(new(Given.ArrayProbe()), Given.Sector with { Angles = new AngleSweep(Given.Deg(40), Given.Deg(to), Given.Deg(1)) })))
            .At(Given.Mm(20), null).Passes[0].Acquisition;
        var fits = StudyOf(70);
        var timePerPosition = 1 / fits.SpeedAtMost!.Value.MillimetresPerSecond;
        Checks.Record(
            "trade", "pulses in the time of one increment at the greatest speed, 31 laws at 6 kHz", fits.PulsesPerPosition!.Value, timePerPosition * 6000, 1e-9, "-",
            "every practitioner: a scan loses lines when it is faster than its pulses", Checks.CommonPractice);
        StudyOf(71).SpeedAtMost!.Value.MetresPerSecond.Should().BeLessThan(fits.SpeedAtMost.Value.MetresPerSecond);
    }

    [Fact]
    public void A_skewed_probe_meets_the_fusion_face_off_its_normal()
    {
        // Square to a face 30 deg from the vertical at 60 deg; turned, the beam's projection is steeper and its way leaves the section.
        SightLine Turned(double skew) => Given.LawAt(Given.ArraySection(probe: Given.ArrayProbe() with { Skew = Given.Deg(skew) }), 60).Sight!;
        Turned(0).Angle.Should().BeApproximately(Math.PI / 3, 1e-12);
        Turned(2).Angle.Should().BeLessThan(Turned(0).Angle);
        Turned(5).Angle.Should().BeLessThan(Turned(2).Angle);
        Turned(-5).Should().Be(Turned(5), "either way alike");
    }

    [Fact]
    public void A_sole_lifts_off_at_its_edges_as_the_pipe_gets_smaller()
    {
        // Around a seam the wedge's length lies on the curve, around a girth weld its width: the shorter side keeps contact longer.
        double Gap(Curvature curvature, double diameter) => ContactGap.Of(curvature, new Length(diameter), Given.ArrayWedge).Millimetres;
        Gap(Curvature.AcrossWeld, 152.4).Should().BeGreaterThan(Gap(Curvature.AcrossWeld, 1400)).And.BeGreaterThan(0.5);
        Gap(Curvature.AcrossWeld, 1400).Should().BeLessThan(0.5);
        Gap(Curvature.AlongWeld, 323.9).Should().BeLessThan(0.5);
    }

    [Fact]
    public void A_warmer_wedge_refracts_to_a_larger_angle()
    {
        var set = Refraction.Through(new Angle(38), new Speed(2337), new Speed(3255))!.Value;
        var warm = Refraction.Through(new Angle(38), new Speed(2300), new Speed(3255))!.Value;
        warm.Degrees.Should().BeGreaterThan(set.Degrees, "the wedge slows down, and the angle in the part rises");
    }
}
