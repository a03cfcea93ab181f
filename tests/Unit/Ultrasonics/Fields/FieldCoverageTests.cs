using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Fields;

public sealed class FieldCoverageTests
{
    [Fact]
    public void A_lone_law_that_hardly_leaves_its_wedge_is_not_seen_by_what_the_wedge_can_do()
    {
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(new Angle(78), new Angle(78), new Angle(1)) };
        var coverage = FieldCoverage.Of(Given.Examination(Given.Pass(new(Given.ArrayProbe()), beam)), Given.Mm(20), null);
        coverage.WithinOwnLaws.Percent.Should().BeGreaterThan(1);
        coverage.Within.Percent.Should().BeLessThan(coverage.WithinOwnLaws.Percent / 2);
    }

    [Fact]
    public void Half_the_step_hardly_changes_the_measure_of_the_wedge()
    {
        var section = Given.ArraySection();
        var (fields, reason) = FieldCoverage.BeamField.AllOf(section);
        reason.Should().BeNull();

        // The sweep goes by 1 deg about the loudest angle, the wedge's measure by 2.
        var field = fields.Single();
        foreach (var path in new[] { 20.0, 30, 40 }) field.WedgeMeasure(path).Should().BeInRange(field.OwnMeasure(15, path) - 0.1, field.OwnMeasure(15, path) + 6);
    }

    [Fact]
    public void A_flat_sole_on_a_very_wide_curve_is_a_flat_sole_on_a_plate()
    {
        const double wedge = 2.337e6, part = 3.255e6, couplant = 1.48e6, thickness = 20, diameter = 1e6;
        var curved = new InterfaceRays(SectionRays.FromOutside(thickness, diameter), wedge, part, new SoleGap(diameter / 2, couplant));
        var flat = new InterfaceRays(SectionRays.Flat(thickness), wedge, part);
        foreach (var (forward, depth, leg) in new[] { (14.0, 15.0, 1), (30.0, 5.0, 2) })
        {
            curved.TryFind(-9, 7, forward, depth, leg, double.NaN, out var over).Should().BeTrue();
            flat.TryFind(-9, 7, forward, depth, leg, double.NaN, out var on).Should().BeTrue();
            over.Exit.Should().BeApproximately(on.Exit, 0.01);
            over.Spread.Should().BeApproximately(on.Spread, 0.001 * on.Spread);
            curved.TimeOf(over).Should().BeApproximately(flat.TimeOf(on), 1e-9);
        }
    }

    [Theory]
    [InlineData(1), InlineData(2)]
    public void Across_a_gap_the_ray_tube_is_that_of_its_neighbour(int leg)
    {
        var section = SectionRays.FromOutside(20, 1400);
        var rays = new InterfaceRays(section, 2.337e6, 3.255e6, new SoleGap(700, 1.48e6));
        const double step = 1e-4;
        rays.TryFollow(-9, 7, -4, 12, leg, out var ray, out var reach, out var slope).Should().BeTrue();
        rays.TryFollow(-9, 7, -4 + step, 12, leg, out _, out var other, out _).Should().BeTrue();
        slope.Should().BeApproximately((other - reach) / step, 1e-3 * slope);
        ray.GapPath.Should().BeGreaterThan(0);
    }

    [Fact]
    public void Under_a_flat_sole_on_a_curve_the_field_is_loudest_about_its_law()
    {
        var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(new Angle(55), new Angle(55), new Angle(1)) };
        var section = Given.Section(Given.Examination(Given.Pass(new(Given.ArrayProbe()), beam), Curvature.AcrossWeld), 25, 1400);
        var law = LawGeometry.Of(section, section.Pass.Probes[0], beam)[0];
        var (source, reason) = FieldSource.Of(section, section.Pass.Probes[0], beam, [law]);
        reason.Should().BeNull();
        var (field, sum) = (source!.LawOf(law), new FieldSum(source));
        section.Rays.TryReach(law.Ray.PartAngle, 15, 1, out var advance, out _).Should().BeTrue();
        double Echo(double off) => sum.TryMove(law.Ray.ExitArc + advance + off, 15, 1) ? sum.Of(field).Echo : 0;
        Enumerable.Range(-80, 161).Select(index => index * 0.1).MaxBy(Echo).Should().BeInRange(-1.5, 1.5);
    }
}
