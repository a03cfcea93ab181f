using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Imaging;

public sealed class ImageWorkTests
{
    private static readonly Beam Direct = Image("T-T");

    [Fact]
    public void An_image_says_what_it_takes_and_what_it_reaches()
    {
        var study = StudyOf(Direct with { Grid = Given.Mm(0.1) });
        study.Transmissions.Should().Be(32);
        study.Wavelength.Millimetres.Should().BeApproximately(3.255 / 5, 1e-9);
        study.Reach.Percent.Should().BeInRange(20, 100);
        study.BestAt.Should().NotBeNull();
        study.Corners.Should().HaveCount(4);
        study.Corners.Single(corner => corner.IsFar).Place.Should().Be(new ImagePlace(Given.Mm(12), Given.Mm(20)));
    }

    [Fact]
    public void The_aperture_opens_wider_to_a_near_corner_than_to_the_far_one()
    {
        var corners = StudyOf(Direct).Corners;
        corners[2].Transmit!.Value.Degrees.Should().BeGreaterThan(corners[3].Transmit!.Value.Degrees).And.BeLessThan(90);
        corners.Should().OnlyContain(corner => corner.Transmit == corner.Receive);
    }

    [Fact]
    public void An_aperture_of_fewer_elements_opens_less_and_takes_fewer_transmissions()
    {
        var (whole, half) = (StudyOf(Direct), StudyOf(Direct with { Aperture = new Aperture(9, 16, 24, 1) }));
        half.Transmissions.Should().Be(16);
        half.Corners[3].Transmit!.Value.Degrees.Should().BeLessThan(whole.Corners[3].Transmit!.Value.Degrees);
    }

    [Fact]
    public void Both_ends_of_a_path_may_change_places()
    {
        var (there, back) = (StudyOf(Image("TT-T")), StudyOf(Image("T-TT")));
        back.Reach.Should().Be(there.Reach);
        back.BestAt.Should().Be(there.BestAt);
        back.Corners.Select(corner => corner.Transmit).Should().Equal(there.Corners.Select(corner => corner.Receive));
    }

    [Fact]
    public void Legs_of_the_way_back_are_named_in_the_order_of_travel() =>
        StudyOf(Image("LT-TL")).Corners.Should().OnlyContain(corner => corner.Transmit == corner.Receive);

    [Fact]
    public void The_mirror_image_of_a_probe_makes_the_mirror_image()
    {
        var (left, right) = (StudyOf(Direct), StudyOf(Direct, side: Side.Right, mirrored: true));
        right.Reach.Percent.Should().BeApproximately(left.Reach.Percent, 1e-6);
        right.BestAt!.Value.Y.Millimetres.Should().BeApproximately(-left.BestAt!.Value.Y.Millimetres, 1e-9);
    }

    [Fact]
    public void A_huge_pipe_is_a_plate()
    {
        var (flat, curved) = (StudyOf(Direct), StudyOf(Direct, diameter: 1e7));
        curved.Reach.Percent.Should().BeApproximately(flat.Reach.Percent, 0.2);
        curved.Corners[3].Transmit!.Value.Degrees.Should().BeApproximately(flat.Corners[3].Transmit!.Value.Degrees, 0.01);
    }

    [Fact]
    public void A_flat_sole_on_a_wide_pipe_images_nearly_as_a_contoured_one()
    {
        var contoured = Given.ArrayWedge with { ContourDiameter = Given.Mm(2000) };
        StudyOf(Direct, diameter: 2000).Reach.Percent.Should().BeApproximately(StudyOf(Direct, diameter: 2000, wedge: contoured).Reach.Percent, 3);
    }

    [Fact]
    public void Reinforcement_is_no_mirror()
    {
        var root = new Reinforcement(Given.Mm(30), Given.Mm(1), Given.Mm(0));
        StudyOf(Image("TT-TT"), root: root).Reach.Percent.Should().BeLessThan(StudyOf(Image("TT-TT")).Reach.Percent / 2);
        StudyOf(Direct, root: root).Should().BeEquivalentTo(StudyOf(Direct));
    }

    [Fact]
    public void What_is_not_recorded_is_not_reached()
    {
        var whole = StudyOf(Direct);
        StudyOf(Direct with { PathWindow = new Band<Length>(null, Given.Mm(30)) }).Reach.Percent.Should().BeLessThan(whole.Reach.Percent);
        var none = StudyOf(Direct with { PathWindow = new Band<Length>(null, Given.Mm(1)) });
        none.Reach.Percent.Should().Be(0);
        none.BestAt.Should().BeNull();
    }

    [Fact]
    public void A_transverse_ray_that_enters_steep_of_the_first_critical_angle_never_turns_longitudinal_at_a_flat_mirror()
    {
        // sin i < vT / vL there is the same angle that the entry must exceed.
        var study = StudyOf(Image("TL-T"));
        study.Reach.Percent.Should().Be(0);
        study.Corners.Should().OnlyContain(corner => corner.Transmit == null);
    }

    [Fact]
    public void A_wider_drop_reaches_more() => StudyOf(Direct, drop: -12).Reach.Percent.Should().BeGreaterThan(StudyOf(Direct).Reach.Percent);

    [Fact]
    public void What_makes_no_image_says_why()
    {
        Beam[] beams =
        [
            Direct with { ImagingPath = null }, Direct with { Region = null }, Direct with { From = 7 }, Direct with { Aperture = new Aperture(30, 8, 37, 1) },
            Direct with { Region = new ImageRegion(Given.Mm(-5), Given.Mm(5), new Depth(25, false), new Depth(30, false)) },
            Direct with { Region = new ImageRegion(Given.Mm(5), Given.Mm(5), new Depth(0, false), new Depth(10, false)) },
        ];
        foreach (var beam in beams)
        {
            var (study, reason) = ImageWork.StudyOf(SectionOf(beam), beam);
            study.Should().BeNull();
            reason.Should().NotBeNullOrEmpty();
        }

        var dual = SectionOf(Direct, transducer: Given.Array with { Kind = TransducerKind.DualPhasedArray });
        ImageWork.StudyOf(dual, Direct).NotComputed.Should().Contain("dual");
        ImageWork.StudyOf(SectionOf(Direct, transducer: Given.Round), Direct).NotComputed.Should().Contain("array");
    }

    [Fact]
    public void An_image_counts_for_the_volume_and_the_side_of_its_probe()
    {
        var section = SectionOf(Direct);
        var coverage = new Study(section.Examination).At(Given.Mm(20), null).Coverage;
        coverage.NotComputed.Should().BeNull();
        coverage.Volume.Percent.Should().BeInRange(5, 99);
        coverage.Left.Percent.Should().BeApproximately(coverage.Volume.Percent, 1e-9);
        coverage.Right.Percent.Should().Be(0);
    }

    [Fact]
    public void Coverage_by_an_image_is_the_share_of_its_points()
    {
        var section = SectionOf(Direct);
        var sight = ImageWork.SightOf(section, section.Pass.Beams.Single(), section.Pass.Probes.Single(), 0, 0)!.Sight;
        var volume = TechLint.Ultrasonics.Coverage.VolumeRectangle.Of(section.Examination.Weld, section.Examination.Volume, 20, null, besideIsInside: false);
        var (seen, all) = (0, 0);
        for (var y = volume.FromY + 0.05; y < volume.ToY; y += 0.1)
        {
            for (var z = volume.FromZ + 0.05; z < volume.ToZ; z += 0.1, all++) seen += sight.Sees(y, z) ? 1 : 0;
        }

        new Study(section.Examination).At(Given.Mm(20), null).Coverage.Volume.Percent.Should().BeApproximately(100.0 * seen / all, 0.3);
    }

    [Fact]
    public void From_inside_an_image_counts_for_the_other_side_of_the_drawing()
    {
        var section = SectionOf(Direct, surface: Surface.Inside);
        var coverage = new Study(section.Examination).At(Given.Mm(20), null).Coverage;
        coverage.Right.Percent.Should().BeApproximately(coverage.Volume.Percent, 1e-9).And.BeGreaterThan(5);
        coverage.Left.Percent.Should().Be(0);
    }

    private static Beam Image(string path) => Given.Sector with
    {
        Id = "image", Scan = ScanKind.TotalFocusing, Angles = null, Aperture = null, Capture = "matrix", ImagingPath = ImagingPath.TryParse(path),
        Region = new ImageRegion(Given.Mm(-12), Given.Mm(12), new Depth(10, IsShare: true), new Depth(100, IsShare: true)),
    };

    private static ImageStudy StudyOf(
        Beam beam, double? diameter = null, Wedge? wedge = null, Reinforcement? root = null, double drop = -6, Side side = Side.Left, bool mirrored = false)
    {
        var stated = mirrored ? beam with { From = 2 } : beam;
        var section = SectionOf(stated, diameter, wedge, root, drop, side);
        var (study, reason) = ImageWork.StudyOf(section, stated);
        reason.Should().BeNull();
        return study!;
    }

    private static PassSection SectionOf(
        Beam beam, double? diameter = null, Wedge? wedge = null, Reinforcement? root = null, double drop = -6, Side side = Side.Left,
        Surface surface = Surface.Outside, Transducer? transducer = null)
    {
        var probe = Given.ArrayProbe(side, 15) with { Wedge = wedge ?? Given.ArrayWedge, Transducer = transducer ?? Given.Array };
        var examination = Given.Examination(
            Given.Pass(new(probe), beam) with { ScanningSurface = surface }, diameter is null ? Curvature.Flat : Curvature.AcrossWeld);
        return Given.Section(examination with { ImageDrop = new Level(drop), Weld = examination.Weld with { Root = root } }, 20, diameter);
    }
}
