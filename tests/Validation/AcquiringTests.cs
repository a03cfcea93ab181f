using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class AcquiringTests
{
    public static TheoryData<string> Speeds => CheckValue.Ids("scan-speed");

    public static TheoryData<string> Times => CheckValue.Ids("recorded-time");

    public static TheoryData<string> Data => CheckValue.Ids("data-per-mm");

    public static TheoryData<string> Ambiguities => CheckValue.Ids("ambiguity");

    public static TheoryData<string> Lines => CheckValue.Ids("scan-lines");

    public static TheoryData<string> EncoderSteps => CheckValue.Ids("encoder-steps");

    public static TheoryData<string> EncoderErrors => CheckValue.Ids("encoder-error");

    public static TheoryData<string> Lengths => CheckValue.Ids("scan-length");

    /// <summary>The rows about data and time bases were worked out at 3.24 mm/us.</summary>
    private static readonly SoundSpeeds Steel = Given.Steel with { Transverse = new Speed(3240) };

    [Theory, MemberData(nameof(Speeds))]
    public void The_greatest_scan_speed_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var study = StudyOf(Sector((int)row["laws"]), Given.Recording with
        {
            PulseRate = new Frequency(row["rate"] / 1e6), Increment = new Length(row["increment"]), Averaging = (int)row["averaging"],
        });
        row.Holds(study.SpeedAtMost!.Value.MillimetresPerSecond);
    }

    [Theory, MemberData(nameof(Times))]
    public void The_pulse_rate_that_a_time_base_allows_agrees(string id)
    {
        // Read back from the samples of one line at 1 GHz: good to a nanosecond.
        var row = CheckValue.Of(id);
        var study = StudyOf(Window(Sector(1), row["path"]), Given.Recording with { DigitisingRate = new Frequency(1000), WeldLength = new Length(1), RunOn = default, RunOff = default });
        var seconds = study.DataSize!.Value.Megabytes * 1e6 / 1e9;
        row.Holds(1 / (row["guard"] * seconds));
    }

    [Theory, MemberData(nameof(Times))]
    public void The_pulse_interval_holds_the_longest_signal(string id)
    {
        // The rows leave the wedge out: its time, there and back, is taken off again, and the guard factor put in.
        var row = CheckValue.Of(id);
        var pass = Given.Pass(new(Given.ArrayProbe()), Window(Sector(3) with { Angles = new AngleSweep(new Angle(50), new Angle(54), new Angle(2)) }, row["path"]));
        var study = StudyOf(pass with { Acquisition = Given.Recording });
        var wedge = study.Beams[0].Laws.Max(law => law.WedgePath.Millimetres);
        var interval = (1 / study.Acquisition.PulseRateAtMost!.Value.Hertz) - (2 * wedge / (Given.Polystyrene * 1000));
        row.Holds(1 / (row["guard"] * interval));

        var slower = StudyOf(pass with { Acquisition = Given.Recording with { Recovery = new Duration(20) } }).Acquisition.PulseRateAtMost!.Value.Hertz;
        (1 / slower).Should().BeApproximately((1 / study.Acquisition.PulseRateAtMost!.Value.Hertz) + 20e-6, 1e-12);
        StudyOf(pass with { Acquisition = Given.Recording with { InstrumentPulseRateAtMost = new Frequency(0.001) } }).Acquisition.PulseRateAtMost!.Value.Hertz
            .Should().BeApproximately(1000, 1e-9, "no instrument gives more than it can");
    }

    [Theory, MemberData(nameof(Ambiguities))]
    public void The_ambiguous_path_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var beam = Sector(1) with
        {
            Angles = new AngleSweep(new Angle(55), new Angle(55), new Angle(1)), PathWindow = new Band<Length>(new Length(row["from"]), new Length(100)), Averaging = 2,
        };
        row.Holds(StudyOf(beam, Given.Recording with { PulseRate = new Frequency(row["rate"] / 1e6) }).AmbiguityPath!.Value.Millimetres);
    }

    [Theory, MemberData(nameof(Lines))]
    public void The_number_of_lines_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(LengthStudy(row).Lines!.Value);
    }

    [Theory, MemberData(nameof(EncoderSteps))]
    public void Steps_an_increment_agree(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(Encoded(row).StepsPerIncrement!.Value.Count);
    }

    [Theory, MemberData(nameof(EncoderErrors))]
    public void A_line_is_late_by_what_counting_every_line_shows(string id)
    {
        var row = CheckValue.Of(id);
        var study = Encoded(row);
        row.Holds(study.PositionErrorAtMost!.Value.Millimetres);

        // Line by line: due at k increments, taken at the first whole step at or past it.
        var (latest, least, greatest, before) = (0.0, double.PositiveInfinity, 0.0, 0.0);
        for (var line = 1; line <= 2000; line++)
        {
            var due = line * row["increment"];
            var taken = Math.Ceiling((due * row["resolution"]) - 1e-6) / row["resolution"];
            latest = Math.Max(latest, taken - due);
            least = Math.Min(least, taken - before);
            greatest = Math.Max(greatest, taken - before);
            before = taken;
        }

        study.PositionErrorAtMost!.Value.Millimetres.Should().BeApproximately(latest, 1e-6);
        study.Increments!.Value.From!.Value.Millimetres.Should().BeApproximately(least, 1e-6);
        study.Increments!.Value.To!.Value.Millimetres.Should().BeApproximately(greatest, 1e-6);
    }

    [Theory, MemberData(nameof(Data))]
    public void The_data_of_a_millimetre_agree(string id)
    {
        var row = CheckValue.Of(id);
        var study = StudyOf(Window(Sector((int)row["laws"]), row["path"]), Given.Recording with
        {
            DigitisingRate = new Frequency(row["rate"]), BytesPerSample = (int)row["bytes"], WeldLength = new Length(1000), RunOn = default, RunOff = default,
        });
        row.Holds(study.DataSize!.Value.Megabytes * 1e6 / 1024 / 1000);
    }

    [Theory, MemberData(nameof(Lengths))]
    public void A_scan_length_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(LengthStudy(row).ScanLength!.Value.Millimetres);
    }

    private static AcquisitionStudy LengthStudy(CheckValue row)
    {
        var recording = Given.Recording with
        {
            WeldLength = row.Inputs.ContainsKey("seam") ? new Length(row["seam"]) : null,
            RunOn = new Length(row.Or("run-on", 0)),
            RunOff = new Length(row.Or("run-off", 0)),
            Overlap = new Length(row.Or("overlap", 0)),
            Increment = new Length(row.Or("increment", 1)),
            SegmentAtMost = row.Inputs.ContainsKey("segment") ? new Length(row["segment"]) : null,
        };
        var probes = new Probes(Given.ArrayProbe(), Given.ArrayProbe(Side.Right) with { Along = new Length(row.Or("spread", 0)) });
        var pass = Given.Pass(probes, Given.Sector) with { Acquisition = recording };
        var study = new Study(Given.Examination(pass, Curvature.AlongWeld)).At(new Length(10), new Length(row.Or("od", 1000)));
        return study.Passes[0].Acquisition;
    }

    private static AcquisitionStudy Encoded(CheckValue row) => StudyOf(
        Sector(1), Given.Recording with { EncoderResolution = new EncoderResolution(row["resolution"]), Increment = new Length(row["increment"]) });

    private static Beam Sector(int laws) => Given.Sector with { Angles = new AngleSweep(new Angle(0), new Angle(laws - 1), new Angle(1)) };

    private static Beam Window(Beam beam, double path) => beam with { PathWindow = new Band<Length>(null, new Length(path)) };

    private static AcquisitionStudy StudyOf(Beam beam, Acquisition acquisition) =>
        StudyOf(Given.Pass(new(Given.ArrayProbe()), beam) with { Acquisition = acquisition }).Acquisition;

    private static PassStudy StudyOf(Pass pass)
    {
        var examination = Given.Examination(pass) with { Part = new Part(Curvature.Flat, Steel, Steel) };
        return new Study(examination).At(new Length(20), null).Passes[0];
    }
}
