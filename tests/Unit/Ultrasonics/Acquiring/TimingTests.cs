using FluentAssertions;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Acquiring;

public sealed class TimingTests
{
    private static readonly Probes Four = new(
        Given.ArrayProbe(), Given.ArrayProbe(Side.Right), Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right));

    private static readonly Beam Monitor = Given.Sector with { Scan = ScanKind.CouplingMonitor, Angles = null, PathWindow = null };

    [Fact]
    public void Pulses_add_up_over_the_beams_of_a_frame()
    {
        var pass = Given.Pass(Four, Given.Sector, Given.Sector with { Id = "other", From = 2, Averaging = 2 }, Given.Diffraction, Monitor);
        Pulses.PerPosition(pass, 1).Should().Be(31 + 62 + 1 + 1);
        Pulses.PerPosition(pass, 4).Should().Be(124 + 62 + 4 + 4, "a beam's own averaging stands before the acquisition's");
    }

    [Fact]
    public void A_full_matrix_capture_counts_once_for_all_its_images()
    {
        var image = Given.Sector with { Scan = ScanKind.TotalFocusing, Angles = null, Capture = "matrix", Aperture = null };
        var pass = Given.Pass(Four, image, image with { Id = "second image" });
        Pulses.PerPosition(pass, 1).Should().Be(32, "one pulse an element");
        Pulses.PerPosition(Given.Pass(Four, image, image with { Id = "second", Capture = "another" }), 1).Should().Be(64);
        var bytes = StudyOf(pass with { Acquisition = Given.Recording with { WeldLength = Given.Mm(1), RunOn = default, RunOff = default } }).DataSize!.Value.Megabytes * 1e6;
        var samples = Math.Ceiling(2 * 170 / 3.255 * 100);
        bytes.Should().BeApproximately(32 * 32 * samples * 71, 1, "every element receives every pulse, over 1 mm and the 70 mm between stations");
    }

    [Fact]
    public void A_pass_of_the_sample_s_kind_gives_its_figures()
    {
        var study = StudyOf(Given.Pass(Four, Given.Sector, Given.Diffraction, Monitor));
        study.PulsesPerPosition.Should().Be(33);
        study.SpeedAtMost!.Value.MillimetresPerSecond.Should().BeApproximately(6000.0 / 33, 1e-9);
        study.ScanLength!.Value.Millimetres.Should().Be(6170);
        study.ScanTime!.Value.Seconds.Should().BeApproximately(6170 / 50.0, 1e-9);
        var pairTime = (2 * Math.Sqrt((25 * 25) + (20 * 20)) / 5.92) - (50 / 5.92) + 2;
        var bytes = (31 * Math.Ceiling(2 * 170 / 3.255 * 100)) + Math.Ceiling(pairTime * 100);
        study.DataRate!.Value.MegabytesPerSecond.Should().BeApproximately(bytes * 50 / 1e6, 1e-9);
        study.DataSize!.Value.Megabytes.Should().BeApproximately(bytes * 6170 / 1e6, 1e-6);
    }

    [Fact]
    public void What_is_not_stated_is_null_and_never_a_guess()
    {
        Acquisition Without(Func<Acquisition, Acquisition> change) => change(Given.Recording);
        var pass = Given.Pass(Four, Given.Sector);
        StudyOf(pass with { Acquisition = null }).Should().Be(new AcquisitionStudy(null, null, null, null, null, null));
        StudyOf(pass with { Acquisition = Without(a => a with { PulseRate = null }) }).SpeedAtMost.Should().BeNull();
        StudyOf(pass with { Acquisition = Without(a => a with { Increment = null }) }).DataRate.Should().BeNull();
        StudyOf(pass with { Acquisition = Without(a => a with { DigitisingRate = null }) }).DataSize.Should().BeNull();
        StudyOf(pass with { Acquisition = Without(a => a with { WeldLength = null }) }).ScanLength.Should().BeNull("a plate has no circumference");
        var slow = StudyOf(pass with { Acquisition = Without(a => a with { Speed = null }) });
        slow.ScanTime!.Value.Seconds.Should().BeApproximately(6100 / (6000.0 / 31), 1e-3 * 6100, "at the speed at most");
        slow.DataRate.Should().BeNull();
        StudyOf(Given.Pass(Four, Given.Sector with { PathWindow = null })).DataRate.Should().BeNull();
        StudyOf(Given.Pass(Four, Given.Sector with { From = 9 })).PulsesPerPosition.Should().BeNull();
    }

    [Fact]
    public void A_girth_weld_is_as_long_as_its_scanning_surface()
    {
        var girth = Given.Recording with { WeldLength = null };
        double Length(Surface surface) =>
            new Study(Given.Examination(Given.Pass(Four, Given.Sector) with { Acquisition = girth, ScanningSurface = surface }, Curvature.AlongWeld))
                .At(Given.Mm(12.7), Given.Mm(323.9)).Passes[0].Acquisition.ScanLength!.Value.Millimetres;
        Length(Surface.Outside).Should().BeApproximately((Math.PI * 323.9) + 25 + 70, 1e-9);
        Length(Surface.Inside).Should().BeApproximately((Math.PI * 298.5) + 25 + 70, 1e-9);
    }

    [Theory]
    [InlineData(6170.0, 6170.0), InlineData(6169.0, 6265.0), InlineData(3132.5, 6265.0), InlineData(3132.4, 6360.0)]
    public void Each_further_segment_adds_its_overlap_and_the_spread(double segment, double expected)
    {
        var study = StudyOf(Given.Pass(Four, Given.Sector) with { Acquisition = Given.Recording with { SegmentAtMost = Given.Mm(segment) } });
        study.ScanLength!.Value.Millimetres.Should().BeApproximately(expected, 1e-6);
    }

    [Fact]
    public void A_segment_no_longer_than_its_overlap_gets_nowhere() =>
        StudyOf(Given.Pass(Four, Given.Sector) with { Acquisition = Given.Recording with { SegmentAtMost = Given.Mm(95) } }).ScanLength.Should().BeNull();

    private static AcquisitionStudy StudyOf(Pass pass) => new Study(Given.Examination(pass)).At(Given.Mm(20), null).Passes[0].Acquisition;
}
