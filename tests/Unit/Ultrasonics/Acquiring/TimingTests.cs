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
    public void The_slowest_signal_of_a_frame_sets_the_pulse_rate_and_neighbours_in_the_sequence_the_ambiguity()
    {
        var near = Given.Sector with { Id = "near", PathWindow = new Band<Length>(Given.Mm(0), Given.Mm(50)) };
        var late = Given.Sector with { Id = "late", PathWindow = new Band<Length>(Given.Mm(60), Given.Mm(120)) };
        var both = StudyOf(Given.Pass(Four, near, late));
        both.PulseRateAtMost.Should().Be(StudyOf(Given.Pass(Four, late)).PulseRateAtMost);
        both.PulseRateAtMost!.Value.Hertz.Should().BeLessThan(StudyOf(Given.Pass(Four, near)).PulseRateAtMost!.Value.Hertz);

        // A window that starts later looks farther back: the one that starts at once is the first to be met.
        both.AmbiguityPath.Should().Be(StudyOf(Given.Pass(Four, near)).AmbiguityPath);
        (StudyOf(Given.Pass(Four, late)).AmbiguityPath!.Value.Millimetres - both.AmbiguityPath!.Value.Millimetres).Should().BeApproximately(60, 1e-9);
        StudyOf(Given.Pass(Four, near, Monitor)).PulseRateAtMost.Should().Be(StudyOf(Given.Pass(Four, near)).PulseRateAtMost);
        StudyOf(Given.Pass(Four, near, Given.Sector with { Id = "open", PathWindow = null })).PulseRateAtMost.Should().BeNull("a window that nobody stated is not guessed");
    }

    [Fact]
    public void A_pair_s_signal_runs_through_both_wedges_to_the_end_of_its_window()
    {
        // 8 mm in each wedge, 2 sqrt(25² + 20²) in the part, 1 us after it.
        var expected = (16 / 2.337) + (2 * Math.Sqrt((25 * 25) + (20 * 20)) / 5.92) + 1;
        StudyOf(Given.Pass(Four, Given.Diffraction)).PulseRateAtMost!.Value.Hertz.Should().BeApproximately(1e6 / expected, 1e-3);
    }

    [Fact]
    public void Times_and_data_of_passes_add_up_and_speeds_do_not()
    {
        var one = Given.Pass(Four, Given.Sector) with { Id = "one", Number = 1 };
        var two = Given.Pass(Four, Given.Sector, Given.Diffraction) with
        {
            Id = "two", Number = 2, Acquisition = Given.Recording with { Speed = Speed.FromMillimetresPerSecond(30) },
        };
        var study = new Study(Given.Examination(one) with { Passes = [one, two] }).At(Given.Mm(20), null);
        study.AcquisitionTotals.ScanTime!.Value.Seconds.Should().BeApproximately((6170 / 50.0) + (6170 / 30.0), 1e-9);
        study.AcquisitionTotals.DataSize!.Value.Megabytes.Should().BeApproximately(study.Passes.Sum(pass => pass.Acquisition.DataSize!.Value.Megabytes), 1e-9);
        study.Passes[0].Acquisition.SpeedAtMost!.Value.MillimetresPerSecond.Should().BeApproximately(6000 / 31.0, 1e-9);
        study.Passes[1].Acquisition.SpeedAtMost!.Value.MillimetresPerSecond.Should().BeApproximately(6000 / 32.0, 1e-9);

        var blind = two with { Acquisition = null };
        new Study(Given.Examination(one) with { Passes = [one, blind] }).At(Given.Mm(20), null).AcquisitionTotals.Should().Be(new AcquisitionTotals(null, null));
    }

    [Fact]
    public void Lines_stand_at_both_ends_and_every_segment_has_its_own()
    {
        StudyOf(Given.Pass(Four, Given.Sector)).Lines.Should().Be(6171);
        StudyOf(Given.Pass(Four, Given.Sector)).Segments.Should().Be(1);
        var segments = StudyOf(Given.Pass(Four, Given.Sector) with { Acquisition = Given.Recording with { SegmentAtMost = Given.Mm(3132.4) } });
        segments.Segments.Should().Be(3);
        segments.ScanLength!.Value.Millimetres.Should().Be(6360);
        segments.Lines.Should().Be(3134 + 3134 + 97, "3132.4, 3132.4 and 95.2 mm: the last line stands at or past the end");
    }

    [Fact]
    public void The_store_s_flow_limits_the_speed()
    {
        var study = StudyOf(Given.Pass(Four, Given.Sector) with { Acquisition = Given.Recording with { InstrumentDataRateAtMost = new DataRate(30) } });
        study.SpeedAtMostForData!.Value.MillimetresPerSecond.Should().BeApproximately(50 * 30 / study.DataRate!.Value.MegabytesPerSecond, 1e-9);
    }

    [Theory]
    [InlineData(12, 1, 12, 0, 1, 1)]
    [InlineData(10, 0.25, 2.5, 0.05, 0.2, 0.3)]
    [InlineData(0.5, 1, 0.5, 1, 0, 2)]
    [InlineData(1, 3, 3, 0, 3, 3)]
    public void An_increment_that_is_no_whole_number_of_steps_makes_lines_irregular(
        double resolution, double increment, double steps, double late, double least, double greatest)
    {
        var grid = EncoderGrid.Of(new EncoderResolution(resolution), Given.Mm(increment))!;
        grid.StepsPerIncrement.Count.Should().BeApproximately(steps, 1e-9);
        grid.PositionErrorAtMost.Millimetres.Should().BeApproximately(late, 1e-9);
        grid.Increments.From!.Value.Millimetres.Should().BeApproximately(least, 1e-9);
        grid.Increments.To!.Value.Millimetres.Should().BeApproximately(greatest, 1e-9);
        EncoderGrid.Of(null, Given.Mm(increment)).Should().BeNull();
        EncoderGrid.Of(new EncoderResolution(double.NaN), Given.Mm(increment)).Should().BeNull();
        EncoderGrid.Of(new EncoderResolution(resolution), Given.Mm(0)).Should().BeNull();
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
