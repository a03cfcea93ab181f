using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Duals;

public sealed class DualLawTests
{
    private static readonly Transducer Halves = Given.Array with { Kind = TransducerKind.DualPhasedArray, Separation = Given.Mm(10) };

    private static readonly Wedge Roofed = Given.ArrayWedge with { ArraySlope = Given.Deg(18), RoofAngle = Given.Deg(5) };

    [Fact]
    public void Under_no_roof_a_law_is_that_of_a_single_array_and_its_axes_never_cross()
    {
        var single = LawOf(Given.Array, Roofed with { RoofAngle = null });
        var dual = LawOf(Halves, Roofed with { RoofAngle = Given.Deg(0) });
        dual.Dual!.CrossingDepth.Should().BeNull();
        dual.Dual.NotComputed.Should().NotBeNull();
        (dual with { Dual = null, Legs = [] }).Should().Be(single with { Legs = [] });
        dual.Legs.Should().Equal(single.Legs);
    }

    [Fact]
    public void A_steeper_roof_crosses_nearer_and_a_wider_separation_deeper()
    {
        double Depth(double roof, double separation) =>
            LawOf(Halves with { Separation = Given.Mm(separation) }, Roofed with { RoofAngle = Given.Deg(roof) }).Dual!.CrossingDepth!.Value.Millimetres;
        Depth(8, 10).Should().BeLessThan(Depth(5, 10));
        Depth(5, 14).Should().BeGreaterThan(Depth(5, 10));
        LawOf(Halves, Roofed).Angle.Degrees.Should().Be(50);
    }

    [Fact]
    public void Halves_that_cross_in_the_wedge_do_not_cross_in_the_part()
    {
        var law = LawOf(Halves with { Separation = Given.Mm(0.5) }, Roofed with { RoofAngle = Given.Deg(10) });
        law.Dual!.CrossingDepth.Should().BeNull();
        law.Fault.Should().Be(LawFault.None);
    }

    [Fact]
    public void A_law_sees_inside_the_overlap_only()
    {
        var law = WorkOut(Halves with { Separation = Given.Mm(14) }, Roofed, 50);
        var (from, to) = (law.Study.Dual!.OverlapFrom!.Value.Millimetres, law.Study.Dual.OverlapTo!.Value.Millimetres);
        from.Should().BeInRange(0.5, 20);
        law.Sight!.PathFrom.Should().BeApproximately(from / Math.Cos(50 * Math.PI / 180), 1e-6);
        law.Sight.PathTo.Should().BeApproximately(to / Math.Cos(50 * Math.PI / 180), 1e-6);
        LawOf(Halves, Roofed).Legs.Should().NotBeEmpty();
    }

    [Fact]
    public void Halves_too_far_apart_see_nothing_and_say_so()
    {
        var law = WorkOut(Halves with { Separation = Given.Mm(80) }, Roofed, 50);
        law.Sight.Should().BeNull();
        law.Study.Dual!.OverlapFrom.Should().BeNull();
        law.Study.Dual.NotComputed.Should().NotBeNull();
    }

    [Fact]
    public void Without_a_separation_there_is_no_geometry() =>
        WorkOut(Halves with { Separation = null }, Roofed, 50).Study.Fault.Should().Be(LawFault.Geometry);

    [Fact]
    public void A_roof_so_steep_that_the_beam_does_not_enter_is_not_refracted() =>
        WorkOut(Halves, Roofed with { RoofAngle = Given.Deg(40) }, 50).Study.Fault.Should().Be(LawFault.NotRefracted);

    [Fact]
    public void A_dual_element_leans_by_its_roof_and_keeps_its_stated_angle()
    {
        var element = Given.Round with { Kind = TransducerKind.DualElement, Separation = Given.Mm(8) };
        var probe = Given.TofdProbe(Side.Left) with { Station = 1, Transducer = element, Wedge = Given.TofdWedge with { RoofAngle = Given.Deg(4) } };
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Wave = Wave.Longitudinal, Angles = null, Aperture = null, Legs = [1] };
        var law = LawGeometry.Of(Given.ArraySection(40, probe: probe), probe, beam)[0].Study;
        law.Fault.Should().Be(LawFault.None);
        law.Angle.Degrees.Should().Be(60);
        law.WedgePath.Millimetres.Should().BeApproximately(8, 1e-12);

        // sin γ = (v / vw) sin ρ; x left after the wedge over tan γ is the path in the plane between the halves.
        var tilt = Math.Asin(Given.Longitudinal / Given.Polystyrene * Math.Sin(4 * Math.PI / 180));
        var path = (4 - (8 * Math.Sin(4 * Math.PI / 180))) / Math.Tan(tilt);
        law.Dual!.CrossingDepth!.Value.Millimetres.Should().BeApproximately(path / 2, 1e-9);
    }

    [Fact]
    public void Around_a_huge_pipe_the_halves_cross_as_in_a_plate()
    {
        var flat = WorkOut(Halves, Roofed, 50).Study.Dual!;
        var curved = WorkOut(Halves, Roofed, 50, 1e7).Study.Dual!;
        curved.CrossingDepth!.Value.Millimetres.Should().BeApproximately(flat.CrossingDepth!.Value.Millimetres, 0.01);
        curved.OverlapTo!.Value.Millimetres.Should().BeApproximately(flat.OverlapTo!.Value.Millimetres, 0.01);
    }

    private static LawStudy LawOf(Transducer transducer, Wedge wedge) => WorkOut(transducer, wedge, 50).Study;

    private static Law WorkOut(Transducer transducer, Wedge wedge, double angle, double? diameter = null)
    {
        var probe = Given.ArrayProbe() with { Transducer = transducer, Wedge = wedge };
        return Given.LawAt(Given.ArraySection(40, diameter, probe: probe), angle, Wave.Longitudinal, new Aperture(1, 16, 16, 1));
    }
}
