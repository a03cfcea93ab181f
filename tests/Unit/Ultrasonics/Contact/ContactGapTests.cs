using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Examinations;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Contact;

public sealed class ContactGapTests
{
    private static readonly Wedge Flat = Given.ArrayWedge;

    [Fact]
    public void The_curved_direction_decides_whether_length_or_width_counts()
    {
        Gap(Curvature.AcrossWeld, 400, Flat).Should().BeApproximately(Sagitta(200, 34), 1e-12);
        Gap(Curvature.AlongWeld, 400, Flat).Should().BeApproximately(Sagitta(200, 24), 1e-12);
        Gap(Curvature.Flat, 400, Flat).Should().Be(0);
        Gap(Curvature.AcrossWeld, null, Flat).Should().Be(0);
    }

    [Fact]
    public void A_sole_cut_for_the_diameter_fits_and_for_another_leaves_the_difference()
    {
        var cut = Flat with { ContourDiameter = Given.Mm(400), ContourDirection = ContourDirection.AlongBeam };
        Gap(Curvature.AcrossWeld, 400, cut).Should().Be(0);
        Gap(Curvature.AcrossWeld, 300, cut).Should().BeApproximately(Sagitta(150, 34) - Sagitta(200, 34), 1e-12);
        Gap(Curvature.AcrossWeld, 500, cut).Should().BeApproximately(Sagitta(200, 34) - Sagitta(250, 34), 1e-12);
        Gap(Curvature.Flat, null, cut).Should().BeApproximately(Sagitta(200, 34), 1e-12, "on a plate it stands on its edges");
    }

    [Fact]
    public void A_sole_cut_the_wrong_way_is_worse_than_a_flat_one()
    {
        var wrong = Flat with { ContourDiameter = Given.Mm(400), ContourDirection = ContourDirection.AcrossBeam };
        Gap(Curvature.AcrossWeld, 400, wrong).Should().BeApproximately(Sagitta(200, 34) + Sagitta(200, 24), 1e-12);
    }

    [Fact]
    public void A_sole_wider_than_the_pipe_never_seems_to_fit() => Gap(Curvature.AcrossWeld, 30, Flat).Should().Be(15);

    [Fact]
    public void The_gap_grows_as_the_diameter_falls() => Gen.Double[35, 5000].Sample(diameter =>
        Gap(Curvature.AcrossWeld, diameter, Flat).Should().BeGreaterThan(Gap(Curvature.AcrossWeld, diameter * 1.01, Flat)));

    private static double Sagitta(double radius, double chord) => radius - Math.Sqrt((radius * radius) - (chord * chord / 4));

    private static double Gap(Curvature curvature, double? diameter, Wedge wedge) =>
        ContactGap.Of(curvature, diameter is { } d ? Given.Mm(d) : null, wedge).Millimetres;
}
