using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Beams;

public sealed class LawGeometryTests
{
    private const double Degree = Math.PI / 180;

    [Fact]
    public void A_law_follows_from_the_aperture_s_centre()
    {
        // By hand: centre of elements 1 to 16 is 7.5 pitches from element 1, up the slope and forward.
        var height = 5 + (7.5 * 0.5 * Math.Sin(36 * Degree));
        var behind = 28 - (7.5 * 0.5 * Math.Cos(36 * Degree));
        var alpha = Math.Asin(2337 / 3255.0 * Math.Sin(60 * Degree));

        var law = Given.LawAt(Given.ArraySection(), 60).Study;

        law.Fault.Should().Be(LawFault.None);
        law.WedgeAngle.Radians.Should().BeApproximately(alpha, 1e-12);
        law.Steering.Radians.Should().BeApproximately(alpha - (36 * Degree), 1e-12);
        law.ExitBehindFront.Millimetres.Should().BeApproximately(behind - (height * Math.Tan(alpha)), 1e-12);
        law.ExitY.Millimetres.Should().BeApproximately(-26 - law.ExitBehindFront.Millimetres, 1e-12);
        law.WedgePath.Millimetres.Should().BeApproximately(height / Math.Cos(alpha), 1e-12);
        law.ActiveAperture.Millimetres.Should().BeApproximately(7.95, 1e-12);
        law.EffectiveAperture.Millimetres.Should().BeApproximately(8 * Math.Cos(alpha - (36 * Degree)) * 0.5 / Math.Cos(alpha), 1e-12);
    }

    [Fact]
    public void The_exit_point_moves_forward_as_the_angle_grows()
    {
        var section = Given.ArraySection();
        var exits = LawGeometry.Of(section, section.Pass.Probes[0], Given.Sector).Select(law => law.Study.ExitBehindFront.Millimetres).ToArray();
        exits.Should().HaveCount(31).And.BeInDescendingOrder();
        (exits[0] - exits[^1]).Should().BeApproximately(7.204 * (0.914 - 0.520), 0.01, "height × (tan α at 70 − tan α at 40 deg)");
    }

    [Fact]
    public void Counting_elements_from_the_front_names_the_same_places_backwards()
    {
        // Element 32 of one count is element 1 of the other.
        var slope = 36 * Degree;
        var front = new ElementPlace(
            Given.Mm(5 + (31 * 0.5 * Math.Sin(slope))), Given.Mm(28 - (31 * 0.5 * Math.Cos(slope))));
        var turned = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { ElementOneAtFront = true, FirstElement = front } };
        var rear = Given.LawAt(Given.ArraySection(), 55, aperture: new Aperture(17, 16, 32, 1)).Study;
        var counted = Given.LawAt(Given.ArraySection(probe: turned), 55, aperture: new Aperture(1, 16, 16, 1)).Study;
        counted.ExitY.Millimetres.Should().BeApproximately(rear.ExitY.Millimetres, 1e-9);
        counted.WedgePath.Millimetres.Should().BeApproximately(rear.WedgePath.Millimetres, 1e-9);
    }

    [Theory]
    [InlineData(null, Surface.Outside), InlineData(406.4, Surface.Outside), InlineData(600.0, Surface.Inside)]
    public void Right_is_the_mirror_image_of_left(double? diameter, Surface surface)
    {
        foreach (var angle in new[] { 42.0, 55, 68 })
        {
            var left = Given.LawAt(Given.ArraySection(12, diameter, surface, Given.ArrayProbe(Side.Left)), angle);
            var right = Given.LawAt(Given.ArraySection(12, diameter, surface, Given.ArrayProbe(Side.Right)), angle);
            right.Study.ExitY.Millimetres.Should().Be(-left.Study.ExitY.Millimetres);
            right.Study.Legs.Select(leg => leg.EndY.Millimetres).Should().Equal(left.Study.Legs.Select(leg => -leg.EndY.Millimetres));
            right.Sight!.Direction.Should().Be(-left.Sight!.Direction);
            (right.Sight with { ExitY = left.Sight.ExitY, Direction = left.Sight.Direction }).Should().Be(left.Sight);
        }
    }

    [Theory]
    [InlineData(true, Surface.Outside), InlineData(false, Surface.Outside), InlineData(true, Surface.Inside), InlineData(false, Surface.Inside)]
    public void A_huge_diameter_is_flat(bool contoured, Surface surface)
    {
        var wedge = Given.ArrayWedge with { ContourDiameter = contoured ? Given.Mm(1e7) : null };
        foreach (var angle in new[] { 42.0, 55, 68 })
        {
            var flat = Given.LawAt(Given.ArraySection(), angle).Study;
            var curved = Given.LawAt(Given.ArraySection(20, 1e7, surface, Given.ArrayProbe() with { Wedge = wedge }), angle).Study;
            curved.ExitY.Millimetres.Should().BeApproximately(flat.ExitY.Millimetres, 1e-3);
            curved.Steering.Degrees.Should().BeApproximately(flat.Steering.Degrees, 1e-3);
            curved.WedgePath.Millimetres.Should().BeApproximately(flat.WedgePath.Millimetres, 1e-3);
            curved.EffectiveAperture.Millimetres.Should().BeApproximately(flat.EffectiveAperture.Millimetres, 1e-3);
            curved.NearField.Millimetres.Should().BeApproximately(flat.NearField.Millimetres, 2e-2);
            curved.Legs[1].EndY.Millimetres.Should().BeApproximately(flat.Legs[1].EndY.Millimetres, 5e-3);
        }
    }

    [Fact]
    public void A_longer_wavelength_on_a_larger_probe_is_the_same_drawing_at_another_scale() => Gen.Double[0.3, 4].Sample(scale =>
    {
        var array = Given.Array with
        {
            Frequency = new Frequency(5 / scale), Pitch = Given.Mm(0.5 * scale), Gap = Given.Mm(0.05 * scale), Elevation = Given.Mm(10 * scale),
        };
        var wedge = Given.ArrayWedge with
        {
            FirstElement = new ElementPlace(Given.Mm(5 * scale), Given.Mm(28 * scale)), Length = Given.Mm(34 * scale),
        };
        var small = Given.LawAt(Given.ArraySection(), 58);
        var large = Given.LawAt(
            Given.ArraySection(20 * scale, probe: Given.ArrayProbe(offset: 26 * scale) with { Transducer = array, Wedge = wedge }), 58);
        large.Study.ExitY.Millimetres.Should().BeApproximately(small.Study.ExitY.Millimetres * scale, 1e-9);
        large.Study.NearField.Millimetres.Should().BeApproximately(small.Study.NearField.Millimetres * scale, 1e-9);
        large.Study.GratingLobeAngle!.Value.Degrees.Should().BeApproximately(small.Study.GratingLobeAngle!.Value.Degrees, 1e-9);
        large.Width.At(50 * scale).Should().BeApproximately(small.Width.At(50) * scale, 1e-9);
    });

    [Fact]
    public void A_transverse_beam_exists_from_the_first_critical_angle_on()
    {
        // In the part: sin θ = vT / vL.
        var critical = Math.Asin(3255.0 / 5920) / Degree;
        Given.LawAt(Given.ArraySection(), critical - 0.01).Study.Fault.Should().Be(LawFault.BelowFirstCritical);
        Given.LawAt(Given.ArraySection(), critical + 0.01).Study.Fault.Should().Be(LawFault.None);
        Given.LawAt(Given.ArraySection(), critical - 0.01, Wave.Longitudinal).Study.Fault.Should().NotBe(LawFault.BelowFirstCritical);
    }

    [Theory]
    [InlineData(17, 16, LawFault.None), InlineData(18, 16, LawFault.OutsideArray), InlineData(0, 16, LawFault.OutsideArray)]
    [InlineData(1, 0, LawFault.OutsideArray), InlineData(int.MaxValue, int.MaxValue, LawFault.OutsideArray)]
    public void An_aperture_lies_on_the_array_or_is_a_fault(int first, int count, LawFault fault) =>
        Given.LawAt(Given.ArraySection(), 60, aperture: new Aperture(first, count, first, 1)).Study.Fault.Should().Be(fault);

    [Fact]
    public void An_exit_point_beyond_the_wedge_is_a_fault_that_keeps_its_place()
    {
        var high = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { FirstElement = new ElementPlace(Given.Mm(30), Given.Mm(28)) } };
        var law = Given.LawAt(Given.ArraySection(probe: high), 70).Study;
        law.Fault.Should().Be(LawFault.OutsideWedge);
        law.ExitBehindFront.Millimetres.Should().BeNegative();
        law.Legs.Should().BeEmpty();
    }

    [Fact]
    public void A_wave_too_fast_for_the_wedge_is_a_fault_without_numbers()
    {
        // Wedge faster than the part: no angle in it belongs to a flat beam.
        var fast = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { Longitudinal = new Speed(6000) } };
        var law = Given.LawAt(Given.ArraySection(probe: fast), 60);
        law.Study.Fault.Should().Be(LawFault.NotRefracted);
        law.Study.ExitY.Millimetres.Should().Be(double.NaN);
        law.Sight.Should().BeNull();
    }

    [Theory]
    [InlineData(double.NaN), InlineData(90.0), InlineData(120.0), InlineData(-95.0)]
    public void An_angle_that_is_none_gives_no_sight(double angle) => Given.LawAt(Given.ArraySection(), angle).Sight.Should().BeNull();

    [Fact]
    public void An_unknown_speed_is_a_fault()
    {
        var wedge = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { Longitudinal = null } };
        Given.LawAt(Given.ArraySection(probe: wedge), 60).Study.Fault.Should().Be(LawFault.UnknownSpeed);
        var examination = Given.ArraySection().Examination with { Part = new Part(Curvature.Flat, Given.Steel with { Transverse = null }, Given.Steel) };
        Given.LawAt(Given.Section(examination, 20), 60).Study.Fault.Should().Be(LawFault.UnknownSpeed);
    }

    [Fact]
    public void A_probe_takes_the_speed_of_the_metal_it_stands_on()
    {
        var part = new Part(Curvature.Flat, Given.Steel, Given.Steel with { Transverse = new Speed(3100) });
        double WedgeAngle(Side side, Surface surface)
        {
            var section = Given.ArraySection(20, null, surface, Given.ArrayProbe(side));
            return Given.LawAt(Given.Section(section.Examination with { Part = part }, 20), 60).Study.WedgeAngle.Degrees;
        }

        WedgeAngle(Side.Right, Surface.Outside).Should().BeGreaterThan(WedgeAngle(Side.Left, Surface.Outside));

        // From inside left and right change places.
        WedgeAngle(Side.Left, Surface.Inside).Should().Be(WedgeAngle(Side.Right, Surface.Outside));
    }

    [Fact]
    public void A_leg_that_ends_on_reinforcement_is_the_last()
    {
        var section = Given.ArraySection();
        var ends = Given.LawAt(section, 60).Study.Legs;
        ends.Should().HaveCount(2);
        var root = new Reinforcement(Given.Mm(8), Given.Mm(2), Given.Mm(ends[0].EndY.Millimetres + 3.99));
        Reinforced(root).Should().ContainSingle().Which.EndsOnReinforcement.Should().BeTrue();
        Reinforced(root with { Centre = Given.Mm(ends[0].EndY.Millimetres + 4.01) }).Should().HaveCount(2);
        Reinforced(root with { Height = Given.Mm(0) }).Should().HaveCount(2, "a flush root is a mirror");

        IReadOnlyList<LegStudy> Reinforced(Reinforcement metal) =>
            [.. Given.LawAt(Given.Section(section.Examination with { Weld = section.Examination.Weld with { Root = metal } }, 20), 60).Study.Legs];
    }

    [Fact]
    public void Skew_flattens_the_beam_in_the_section_and_keeps_its_own_path()
    {
        var straight = Given.LawAt(Given.ArraySection(), 60);
        var skewed = Given.LawAt(Given.ArraySection(probe: Given.ArrayProbe() with { Skew = Given.Deg(20) }), 60);
        Math.Tan(skewed.Sight!.Angle).Should().BeApproximately(Math.Tan(60 * Degree) * Math.Cos(20 * Degree), 1e-12);
        skewed.Study.Legs[0].Path.Millimetres.Should().BeApproximately(40, 1e-9, "t / cos θ, whichever way it is turned");
        skewed.Study.Legs[0].Incidence.Degrees.Should().BeApproximately(60, 1e-9);
        skewed.Study.Legs[0].BeamWidth.Millimetres.Should().BeApproximately(straight.Study.Legs[0].BeamWidth.Millimetres, 1e-9);
    }

    [Fact]
    public void A_path_window_is_measured_along_the_beam_itself()
    {
        var skewed = Given.LawAt(Given.ArraySection(probe: Given.ArrayProbe() with { Skew = Given.Deg(20) }), 60).Sight!;
        (20 / Math.Cos(skewed.Angle) / skewed.PathTo).Should().BeApproximately(40.0 / 170, 1e-12);
    }

    [Fact]
    public void Around_a_pipe_a_beam_too_flat_for_the_bore_has_no_leg()
    {
        var probe = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { ContourDiameter = Given.Mm(168.3) } };
        var section = Given.ArraySection(18.26, 168.3, probe: probe);
        var greatest = Math.Asin(1 - (2 * 18.26 / 168.3)) / Degree;
        Given.LawAt(section, greatest - 0.1).Study.Legs.Should().HaveCount(2);
        var law = Given.LawAt(section, greatest + 0.1);
        law.Study.Legs.Should().BeEmpty();
        law.Sight.Should().NotBeNull("it still sees what lies above the bore");
    }

    [Fact]
    public void A_single_element_leaves_its_wedge_where_the_wedge_says()
    {
        var section = Given.TofdSection(20);
        var law = LawGeometry.Of(section, section.Pass.Probes[0], Given.Diffraction)[0].Study;
        law.Angle.Degrees.Should().Be(60);
        law.ExitY.Millimetres.Should().Be(-25);
        law.WedgePath.Millimetres.Should().Be(8);
        law.GratingLobeAngle.Should().BeNull();
        LawGeometry.Of(section, section.Pass.Probes[0], Given.Diffraction with { Wave = Wave.Transverse })[0].Study.Fault
            .Should().Be(LawFault.Geometry, "the wedge is made for the other wave");
    }

    [Fact]
    public void Under_a_flat_sole_a_curve_turns_a_fixed_beam()
    {
        // The index point lies 2 mm ahead of the middle, where a convex surface falls away: the beam flattens, and more so on a smaller pipe.
        double AngleOn(double diameter)
        {
            var section = Given.TofdSection(20, outsideDiameter: diameter);
            return LawGeometry.Of(section, section.Pass.Probes[0], Given.Diffraction)[0].Study.Angle.Degrees;
        }

        AngleOn(1400).Should().BeInRange(60.5, 62.5);
        AngleOn(700).Should().BeGreaterThan(AngleOn(1400));
        var contoured = Given.TofdSection(20, outsideDiameter: 700, wedge: Given.TofdWedge with { ContourDiameter = Given.Mm(700) });
        LawGeometry.Of(contoured, contoured.Pass.Probes[0], Given.Diffraction)[0].Study.Angle.Degrees.Should().Be(60);
    }

    [Fact]
    public void A_wedge_wider_than_the_pipe_is_a_fault()
    {
        var probe = Given.ArrayProbe() with { Wedge = Given.ArrayWedge with { ContourDiameter = Given.Mm(30) } };
        Given.LawAt(Given.ArraySection(3, 30, probe: probe), 60).Study.Fault.Should().Be(LawFault.Geometry);
    }

    [Fact]
    public void A_grating_lobe_is_told_in_the_part_where_it_enters()
    {
        var fine = Given.ArrayProbe() with { Transducer = Given.Array with { Pitch = Given.Mm(0.23) } };
        Given.LawAt(Given.ArraySection(probe: fine), 60).Study.GratingLobeAngle.Should().BeNull("less than half a wavelength in the wedge");
        var coarse = Given.ArrayProbe() with { Transducer = Given.Array with { Pitch = Given.Mm(1) } };
        var law = Given.LawAt(Given.ArraySection(probe: coarse), 60, aperture: new Aperture(1, 8, 8, 1)).Study;
        var wedge = Math.Asin(Math.Sin(law.Steering.Radians) - (2337 / 5e3 / 1)) + (36 * Degree);
        law.GratingLobeAngle!.Value.Radians.Should().BeApproximately(Math.Asin(3255.0 / 2337 * Math.Sin(wedge)), 1e-9);
    }

    [Fact]
    public void A_walking_aperture_gives_a_law_at_every_stop()
    {
        var beam = Given.Sector with { Scan = ScanKind.Linear, Angles = new AngleSweep(Given.Deg(55), Given.Deg(55), Given.Deg(1)), Aperture = new Aperture(1, 10, 32, 4) };
        var section = Given.ArraySection();
        var laws = LawGeometry.Of(section, section.Pass.Probes[0], beam);
        laws.Select(law => law.Study.FirstElement).Should().Equal(1, 5, 9, 13, 17, 21);
        laws.Select(law => law.Study.ExitBehindFront.Millimetres).Should().BeInDescendingOrder();
        laws.Should().OnlyContain(law => law.Study.Angle.Degrees == laws[0].Study.Angle.Degrees);
    }
}
