using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Faces;

public sealed class FaceKernelTests
{
    private static Preparation Of(PreparationShape shape, double bevel = 30, double rootFace = 2, double gap = 2, double misalignment = 0) => new(
        shape, Surface.Outside, Side.Left, Groove.None with { FaceAngle = Given.Deg(bevel), Radius = Given.Mm(6) }, Groove.None with { FaceAngle = Given.Deg(bevel) },
        Given.Mm(rootFace), Given.Mm(gap), Given.Mm(misalignment), Given.Mm(0.2), [], []);

    private static Pass Both(double left = 30, double right = 30) => Given.Pass(
        new(Given.ArrayProbe(Side.Left, left), Given.ArrayProbe(Side.Right, right)),
        Given.Sector with { Id = "left" }, Given.Sector with { Id = "right", From = 2 });

    private static Examination Examined(Preparation preparation, Pass pass, Curvature curvature = Curvature.Flat) =>
        Given.Examination(pass, curvature) with { Weld = new WeldSection(preparation, null, null, null) };

    private static FaceStudy At(Examination examination, double thickness = 16, double? diameter = null) =>
        new Study(examination).At(Given.Mm(thickness), diameter is { } d ? Given.Mm(d) : null).Faces;

    private static FaceService From(FaceStudy study, Side face, Side from) => study.Faces.Single(service => service.Face == face && service.From == from);

    [Fact]
    public void A_v_is_met_squarely_from_its_own_side_in_the_second_leg_and_its_root_face_by_the_corner()
    {
        var study = At(Examined(Of(PreparationShape.SingleV), Both()));
        var own = From(study, Side.Left, Side.Left);
        own.By.Should().Be(FaceWay.Beam);
        own.Legs.Should().ContainSingle().Which.Leg.Should().Be(2);
        own.Pieces.Should().HaveCount(2);
        own.Pieces[0].Slope.Degrees.Should().BeApproximately(30, 1e-9);
        own.Pieces[1].By.Should().Be(FaceWay.CornerEcho, "no single ray meets an upright face squarely");
        own.Pieces[1].Slope.Degrees.Should().Be(0);
        From(study, Side.Left, Side.Right).Ways.Should().NotContain(way => way.Way == FaceWay.Beam, "from over the weld the bevel is met at a slant");
        foreach (var face in study.Faces)
        {
            face.Ways.Sum(way => way.Share.Percent).Should().BeApproximately(face.Served.Percent, 1e-9);
            face.FromEither.Percent.Should().BeGreaterThanOrEqualTo(face.Served.Percent - 1e-9);
        }
    }

    [Fact]
    public void The_worst_place_of_a_face_lies_on_what_is_not_served()
    {
        var own = From(At(Examined(Of(PreparationShape.SingleV), Both())), Side.Left, Side.Left);
        own.Served.Percent.Should().BeLessThan(100);
        own.Worst!.Value.Incidence!.Value.Degrees.Should().BeGreaterThan(5);

        // Wholly served by rays: the worst place is the worst of those.
        var lax = Examined(Of(PreparationShape.SingleV, rootFace: 0), Both()) with { FusionFaceIncidence = Given.Deg(60) };
        var all = From(At(lax), Side.Left, Side.Left);
        all.Served.Percent.Should().Be(100);
        all.Worst!.Value.Incidence!.Value.Degrees.Should().BeInRange(5, 60);
    }

    [Fact]
    public void Left_and_right_are_mirror_images()
    {
        var one = At(Examined(Of(PreparationShape.DoubleV), Both(26, 34)));
        var other = At(Examined(Of(PreparationShape.DoubleV), Both(34, 26)));
        foreach (var face in one.Faces)
        {
            var twin = From(other, Turned(face.Face), Turned(face.From));
            twin.Served.Percent.Should().BeApproximately(face.Served.Percent, 1e-6);
            twin.By.Should().Be(face.By);
        }

        static Side Turned(Side side) => side == Side.Left ? Side.Right : Side.Left;
    }

    [Fact]
    public void A_huge_pipe_is_a_plate()
    {
        var flat = At(Examined(Of(PreparationShape.SingleV), Both()));
        var curved = At(Examined(Of(PreparationShape.SingleV), Both(), Curvature.AcrossWeld), 16, 1e7);
        for (var index = 0; index < flat.Faces.Length; index++)
            curved.Faces[index].Served.Percent.Should().BeApproximately(flat.Faces[index].Served.Percent, 0.7, "one cell of 0.1 mm may fall either way");
    }

    [Fact]
    public void From_one_side_only_that_side_is_told()
    {
        var study = At(Examined(Of(PreparationShape.SingleV), Given.Pass(new(Given.ArrayProbe(Side.Left, 30)), Given.Sector)));
        study.Faces.Select(face => (face.Face, face.From)).Should().Equal((Side.Left, Side.Left), (Side.Right, Side.Left));
    }

    [Fact]
    public void Two_passes_serve_together_and_from_inside_the_sides_are_the_common_ones()
    {
        var outside = Given.Pass(new(Given.ArrayProbe(Side.Left, 30)), Given.Sector) with { Id = "outside", Number = 1 };
        var inside = outside with { Id = "inside", Number = 2, ScanningSurface = Surface.Inside };
        var both = At(Examined(Of(PreparationShape.DoubleV), outside) with { Passes = [outside, inside] });
        both.Faces.Select(face => (face.Face, face.From)).Should().Equal(
            [(Side.Left, Side.Left), (Side.Left, Side.Right), (Side.Right, Side.Left), (Side.Right, Side.Right)], "its left is the right of the outer surface");

        // A double V alike above and below looks from inside as it does from outside, turned over.
        From(both, Side.Right, Side.Right).Served.Percent.Should().BeApproximately(From(both, Side.Left, Side.Left).Served.Percent, 1e-6);
    }

    [Fact]
    public void A_diffraction_pair_serves_upright_faces_within_its_zone_alone()
    {
        Examination With(double to) => Examined(
            Of(PreparationShape.PressureWeld),
            Given.Pass(new(Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right)), Given.Diffraction with { ZoneTo = new Depth(to, IsShare: true) }));
        var whole = From(At(With(100), 20), Side.Left, Side.Left);
        whole.By.Should().Be(FaceWay.Tofd);
        whole.Served.Percent.Should().BeInRange(40, 90, "the dead zones are not served");
        whole.Worst!.Value.Incidence.Should().BeNull("no ray is seen there");
        From(At(With(60), 20), Side.Left, Side.Left).Served.Percent.Should().BeLessThan(whole.Served.Percent - 10);
    }

    [Fact]
    public void A_bounce_on_a_raised_root_serves_no_corner_over_the_weld_but_an_open_edge_has_its_own()
    {
        var flush = Examined(Of(PreparationShape.SingleV), Both());
        var raised = flush with { Weld = flush.Weld with { Root = new Reinforcement(Given.Mm(16), Given.Mm(1), default) } };
        double Corner(Examination examination, Side from) =>
            From(At(examination), Side.Left, from).Ways.FirstOrDefault(way => way.Way == FaceWay.CornerEcho).Share.Percent;
        Corner(flush, Side.Left).Should().BeGreaterThan(5);
        Corner(raised, Side.Left).Should().BeGreaterThan(5, "an edge that is not fused has no root fused to it");
        Corner(flush, Side.Right).Should().BeGreaterThan(0);
        Corner(raised, Side.Right).Should().Be(0);
    }

    [Fact]
    public void What_cannot_be_told_says_why()
    {
        At(Examined(Of(PreparationShape.SingleV), Both(), Curvature.AcrossWeld), 16, 20).NotComputed.Should().NotBeNull("that wall leaves no bore");
        var image = Given.Sector with { Scan = ScanKind.TotalFocusing, Angles = null, Capture = "matrix" };
        At(Examined(Of(PreparationShape.SingleV), Given.Pass(new(Given.ArrayProbe()), image))).NotComputed.Should().Contain("total-focusing");
        At(Examined(Of(PreparationShape.SingleV), Both()) with { FusionFaceIncidence = Given.Deg(double.NaN) }).NotComputed.Should().NotBeNull();
    }

    [Fact]
    public void The_worst_case_is_no_better_than_any_case_and_says_where_it_is()
    {
        var pass = Both() with { Tolerance = new PositioningTolerance(Given.Mm(2), Given.Deg(2)) };
        var examination = Examined(Of(PreparationShape.SingleV, misalignment: 1.5), pass) with { Thickness = new Band<Length>(Given.Mm(12), Given.Mm(20)) };
        var study = new Study(examination);
        var worst = study.Faces;
        worst.Study.NotComputed.Should().BeNull();
        var least = worst.Study.Faces.Min(face => face.FromEither.Percent);
        foreach (var one in study.Cases) least.Should().BeLessThanOrEqualTo(one.Faces.Faces.Min(face => face.FromEither.Percent) + 1e-9);
        (worst.LeftError, worst.RightError, worst.SkewError, worst.Misalignment).Should().NotBe((Length.Zero, Length.Zero, default, Length.Zero), "some error makes it worse");
    }

    [Fact]
    public void A_step_of_the_edges_moves_the_right_face_down_and_none_changes_nothing()
    {
        var examination = Examined(Of(PreparationShape.SingleV), Both());
        var level = FaceKernel.Of(examination, new FacePlaceInRange(16, null));
        var stepped = FaceKernel.Of(examination, new FacePlaceInRange(16, null, Misalignment: 1.5));
        stepped.Faces[2].Pieces[0].From.Z.Millimetres.Should().Be(1.5);
        stepped.Faces[0].Pieces[0].From.Z.Millimetres.Should().Be(0);
        stepped.Faces[0].Served.Should().Be(level.Faces[0].Served, "from its own side nothing has moved");
        stepped.Faces[3].Served.Should().Be(level.Faces[3].Served);
    }
}
