using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Welds;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Welds;

public sealed class WeldOutlineTests
{
    private static Groove V(double angle) => Groove.None with { FaceAngle = new Angle(angle) };

    private static Groove U(double angle, double radius) => V(angle) with { Radius = new Length(radius) };

    private static Preparation Of(
        PreparationShape shape, Groove outer, double rootFace = 0, double rootGap = 0, Surface opens = Surface.Outside, Groove? inner = null,
        Side bevelled = Side.Left) =>
        new(shape, opens, bevelled, outer, inner ?? Groove.None, new Length(rootFace), new Length(rootGap), default, default, [], []);

    // Half width at the surface a V opens to, g/2 + (t − land) tan β: geometry, worked out apart.
    [Theory]
    [InlineData(10, 30, 3, 1.5, 6.41)]
    [InlineData(20, 30, 3, 1.5, 12.18)]
    [InlineData(22, 37.5, 3, 1.6, 17.15)]
    [InlineData(40, 37.5, 3, 1.6, 30.97)]
    public void A_single_v_opens_by_its_angle_above_the_root_face(double thickness, double angle, double gap, double land, double half)
    {
        var outline = WeldOutline.At(Of(PreparationShape.SingleV, V(angle), land, gap), new Length(thickness));
        outline.OpeningOn(Surface.Outside).Right.Millimetres.Should().BeApproximately(half, 0.02);
        outline.OpeningOn(Surface.Outside).Left.Millimetres.Should().BeApproximately(-half, 0.02);
        outline.OpeningOn(Surface.Inside).Right.Millimetres.Should().Be(gap / 2);
        outline.WidthAt(new Length(thickness - (land / 2))).Millimetres.Should().BeApproximately(gap, 1e-12, "the root face is upright");

        var inside = WeldOutline.At(Of(PreparationShape.SingleV, V(angle), land, gap, Surface.Inside), new Length(thickness));
        inside.OpeningOn(Surface.Inside).Right.Millimetres.Should().BeApproximately(half, 0.02);
        inside.OpeningOn(Surface.Outside).Right.Millimetres.Should().Be(gap / 2);
    }

    [Fact]
    public void A_square_preparation_is_as_wide_as_its_gap_everywhere()
    {
        var outline = WeldOutline.At(Of(PreparationShape.Square, Groove.None, rootGap: 2), new Length(8));
        foreach (var depth in new[] { 0.0, 3, 8 }) outline.WidthAt(new Length(depth)).Millimetres.Should().Be(2);
    }

    [Fact]
    public void A_double_v_shares_what_the_root_face_leaves()
    {
        // 24 − 4 = 20 mm of grooves, 60 % of them outside.
        var preparation = Of(
            PreparationShape.DoubleV, V(30) with { DepthShare = new Depth(60, IsShare: true) }, rootFace: 4, inner: V(45));
        var outline = WeldOutline.At(preparation, new Length(24));
        outline.OpeningOn(Surface.Outside).Right.Millimetres.Should().BeApproximately(12 * Math.Tan(Math.PI / 6), 1e-9);
        outline.OpeningOn(Surface.Inside).Right.Millimetres.Should().BeApproximately(8, 1e-9);
        outline.WidthAt(new Length(12)).Millimetres.Should().BeApproximately(0, 1e-9);
        outline.WidthAt(new Length(16)).Millimetres.Should().BeApproximately(0, 1e-9);
        outline.WidthAt(new Length(18)).Millimetres.Should().BeApproximately(4, 1e-9);

        var byDepth = preparation with { Outer = preparation.Outer with { DepthShare = new Depth(5, IsShare: false) } };
        WeldOutline.At(byDepth, new Length(24)).OpeningOn(Surface.Inside).Right.Millimetres.Should().BeApproximately(15, 1e-9);
    }

    [Fact]
    public void A_u_runs_from_a_level_root_through_its_radius_into_the_face()
    {
        var outline = WeldOutline.At(Of(PreparationShape.SingleU, U(10, 6), rootFace: 2, rootGap: 2), new Length(30));
        var sine = Math.Sin(10 * Math.PI / 180);

        // The radius ends 6 (1 − sin 10°) above the root face, 6 cos 10° beside the gap's edge.
        var end = 28 - (6 * (1 - sine));
        outline.AcrossAt(new Length(end)).Right.Millimetres.Should().BeApproximately(1 + (6 * Math.Cos(10 * Math.PI / 180)), 1e-9);
        outline.AcrossAt(new Length(28)).Right.Millimetres.Should().BeApproximately(1, 1e-9);
        outline.AcrossAt(new Length(29)).Right.Millimetres.Should().Be(1);

        // No corner where arc and face meet: the slope is tan 10° on both sides.
        double At(double depth) => outline.AcrossAt(new Length(depth)).Right.Millimetres;
        var tangent = Math.Tan(10 * Math.PI / 180);
        ((At(end - 1e-5) - At(end)) / 1e-5).Should().BeApproximately(tangent, 1e-4);
        ((At(end) - At(end + 1e-5)) / 1e-5).Should().BeApproximately(tangent, 1e-4);
        At(0).Should().BeApproximately(1 + (6 * Math.Cos(10 * Math.PI / 180)) + (end * tangent), 1e-9);

        var arc = outline.Right.Single(piece => piece.Centre is not null);
        arc.Radius.Millimetres.Should().Be(6);
        foreach (var place in new[] { arc.From, arc.To })
        {
            Math.Sqrt(Math.Pow(place.Y.Millimetres - arc.Centre!.Value.Y.Millimetres, 2) + Math.Pow(place.Z.Millimetres - arc.Centre.Value.Z.Millimetres, 2))
                .Should().BeApproximately(6, 1e-9);
        }
    }

    [Theory]
    [InlineData(PreparationShape.SingleBevel)]
    [InlineData(PreparationShape.SingleJ)]
    [InlineData(PreparationShape.DoubleJ)]
    public void One_sided_grooves_leave_the_other_face_upright(PreparationShape shape)
    {
        var outline = WeldOutline.At(Of(shape, U(20, 5), 2, 3, inner: U(20, 5), bevelled: Side.Right), new Length(25));
        outline.Left.Should().ContainSingle();
        outline.OpeningOn(Surface.Outside).Left.Millimetres.Should().Be(-1.5);
        outline.OpeningOn(Surface.Outside).Right.Millimetres.Should().BeGreaterThan(3);
        (outline.OpeningOn(Surface.Inside).Right.Millimetres > 3).Should().Be(shape == PreparationShape.DoubleJ);
    }

    [Fact]
    public void A_compound_v_changes_its_angle_at_the_break()
    {
        // The break 11 mm below the surface of a wall of 30 mm: 19 mm above the bore, 17.4 mm above the root face.
        var groove = V(37.5) with { UpperFaceAngle = new Angle(10), BreakDepth = new Length(11) };
        var outline = WeldOutline.At(Of(PreparationShape.CompoundV, groove, 1.6, 3), new Length(30));
        var atBreak = 1.5 + (17.4 * Math.Tan(37.5 * Math.PI / 180));
        outline.AcrossAt(new Length(11)).Right.Millimetres.Should().BeApproximately(atBreak, 1e-9);
        outline.AcrossAt(Length.Zero).Right.Millimetres.Should().BeApproximately(atBreak + (11 * Math.Tan(10 * Math.PI / 180)), 1e-9);

        // Thinner than the break is deep: the upper angle alone; without a break the lower one.
        WeldOutline.At(Of(PreparationShape.CompoundV, groove, 1.6, 3), new Length(10)).AcrossAt(Length.Zero).Right.Millimetres
            .Should().BeApproximately(1.5 + (8.4 * Math.Tan(10 * Math.PI / 180)), 1e-9);
        WeldOutline.At(Of(PreparationShape.CompoundV, V(37.5), 1.6, 3), new Length(10)).AcrossAt(Length.Zero).Right.Millimetres
            .Should().BeApproximately(1.5 + (8.4 * Math.Tan(37.5 * Math.PI / 180)), 1e-9);
    }

    [Fact]
    public void A_pressure_weld_is_its_bond_line()
    {
        var preparation = Of(PreparationShape.PressureWeld, Groove.None) with { BondLineWidth = new Length(0.2) };
        WeldOutline.At(preparation, new Length(12)).WidthAt(new Length(6)).Millimetres.Should().Be(0.2);
    }

    [Fact]
    public void A_profile_is_its_points_and_goes_on_straight_to_the_surfaces()
    {
        var preparation = Of(PreparationShape.Profile, Groove.None) with
        {
            LeftFace = [new(new Depth(0, true), new Length(-9)), new(new Depth(50, true), new Length(-2)), new(new Depth(100, true), new Length(-3))],
            RightFace = [new(new Depth(2, false), new Length(8)), new(new Depth(18, false), new Length(1))],
        };
        var outline = WeldOutline.At(preparation, new Length(20));
        outline.AcrossAt(new Length(5)).Left.Millimetres.Should().BeApproximately(-5.5, 1e-9);
        outline.AcrossAt(new Length(1)).Right.Millimetres.Should().Be(8);
        outline.AcrossAt(new Length(10)).Right.Millimetres.Should().BeApproximately(4.5, 1e-9);
        outline.AcrossAt(new Length(20)).Right.Millimetres.Should().Be(1);
    }

    [Fact]
    public void A_cap_narrower_than_the_opening_is_noticed()
    {
        var outline = WeldOutline.At(Of(PreparationShape.SingleV, V(30), 1.5, 3), new Length(10));
        outline.IsSpannedBy(new Reinforcement(new(14), new(2), default), Surface.Outside).Should().BeTrue();
        outline.IsSpannedBy(new Reinforcement(new(12), new(2), default), Surface.Outside).Should().BeFalse();
        outline.IsSpannedBy(new Reinforcement(new(14), new(2), new(1)), Surface.Outside).Should().BeFalse();
        outline.IsSpannedBy(new Reinforcement(new(3), new(1), default), Surface.Inside).Should().BeTrue();
    }

    [Fact]
    public void Faces_run_unbroken_from_surface_to_surface() => Gen.Select(
        Gen.Int[(int)PreparationShape.Square, (int)PreparationShape.PressureWeld].Select(value => (PreparationShape)value),
        Gen.Double[1, 80], Gen.Double[0, 60], Gen.Double[0, 12], Gen.Double[0, 100], Gen.Double[0, 6],
        Gen.Bool).Sample(
        (shape, thickness, angle, radius, share, rootFace, opensInside) =>
        {
            var opens = opensInside ? Surface.Inside : Surface.Outside;
            var groove = U(angle, radius) with { DepthShare = new Depth(share, true), UpperFaceAngle = new Angle(angle / 3), BreakDepth = new Length(radius) };
            var outline = WeldOutline.At(Of(shape, groove, rootFace, 2, opens, groove), new Length(thickness));
            foreach (var face in new[] { outline.Left, outline.Right })
            {
                face[0].From.Z.Millimetres.Should().BeApproximately(0, 1e-9);
                face[^1].To.Z.Millimetres.Should().BeApproximately(thickness, 1e-9);
                for (var index = 1; index < face.Length; index++)
                {
                    face[index].From.Y.Millimetres.Should().BeApproximately(face[index - 1].To.Y.Millimetres, 1e-9);
                    face[index].From.Z.Millimetres.Should().BeApproximately(face[index - 1].To.Z.Millimetres, 1e-9);
                }

                foreach (var piece in face)
                {
                    var middle = (piece.From.Z.Millimetres + piece.To.Z.Millimetres) / 2;
                    var across = face == outline.Left ? outline.AcrossAt(new Length(middle)).Left : outline.AcrossAt(new Length(middle)).Right;
                    Math.Abs(across.Millimetres).Should().BeInRange(
                        Math.Min(Math.Abs(piece.From.Y.Millimetres), Math.Abs(piece.To.Y.Millimetres)) - 1e-6,
                        Math.Max(Math.Abs(piece.From.Y.Millimetres), Math.Abs(piece.To.Y.Millimetres)) + 1e-6);
                }
            }
        },
        iter: 500);

    [Fact]
    public void The_examined_rectangle_starts_at_the_outermost_toe_of_each_side()
    {
        var weld = new WeldSection(
            Of(PreparationShape.SingleV, V(30), 1.5, 3), new Reinforcement(new(16), new(2), new(1)), new Reinforcement(new(20), new(0), new(-4)), null);
        var volume = new ExaminedVolume(new Length(10), new Depth(10, true), new Depth(18, false));
        VolumeRectangle.Of(weld, volume, 20, null, besideIsInside: false).Should().Be(new VolumeRectangle(-24, 19, 2, 18));
    }

    [Fact]
    public void Without_toes_the_rectangle_starts_at_the_widest_of_the_preparation()
    {
        var volume = new ExaminedVolume(new Length(10), new Depth(0, true), new Depth(100, true));
        var single = new WeldSection(Of(PreparationShape.SingleV, V(45), 0, 2, Surface.Inside), null, null, null);
        VolumeRectangle.Of(single, volume, 10, null, besideIsInside: false).ToY.Should().BeApproximately(21, 1e-9);
        var bond = new WeldSection(
            Of(PreparationShape.PressureWeld, Groove.None) with { BondLineWidth = new Length(0.2) }, null, null, null);
        VolumeRectangle.Of(bond, volume, 10, null, besideIsInside: false).Should().Be(new VolumeRectangle(-10.1, 10.1, 0, 10));
    }

    [Fact]
    public void On_a_curve_lengths_on_the_inner_surface_count_by_the_ratio_of_the_radii()
    {
        var weld = new WeldSection(Of(PreparationShape.SingleV, V(30)), null, new Reinforcement(new(20), new(1), default), null);
        var volume = new ExaminedVolume(new Length(10), new Depth(0, true), new Depth(100, true));
        VolumeRectangle.Of(weld, volume, 20, 200, besideIsInside: false).ToY.Should().BeApproximately((10 / 0.8) + 10, 1e-9);
        VolumeRectangle.Of(weld, volume, 20, 200, besideIsInside: true).ToY.Should().BeApproximately(20 / 0.8, 1e-9);
    }
}
