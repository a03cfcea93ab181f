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
        var recording = Given.Recording with
        {
            WeldLength = row.Inputs.ContainsKey("seam") ? new Length(row["seam"]) : null,
            RunOn = new Length(row.Or("run-on", 0)),
            RunOff = new Length(row.Or("run-off", 0)),
            Overlap = new Length(row.Or("overlap", 0)),
            SegmentAtMost = row.Inputs.ContainsKey("segment") ? new Length(row["segment"]) : null,
        };
        var probes = new Probes(Given.ArrayProbe(), Given.ArrayProbe(Side.Right) with { Along = new Length(row.Or("spread", 0)) });
        var pass = Given.Pass(probes, Given.Sector) with { Acquisition = recording };
        var study = new Study(Given.Examination(pass, Curvature.AlongWeld)).At(new Length(10), new Length(row.Or("od", 1000)));
        row.Holds(study.Passes[0].Acquisition.ScanLength!.Value.Millimetres);
    }

    private static Beam Sector(int laws) => Given.Sector with { Angles = new AngleSweep(new Angle(0), new Angle(laws - 1), new Angle(1)) };

    private static Beam Window(Beam beam, double path) => beam with { PathWindow = new Band<Length>(null, new Length(path)) };

    private static AcquisitionStudy StudyOf(Beam beam, Acquisition acquisition)
    {
        var pass = Given.Pass(new(Given.ArrayProbe()), beam) with { Acquisition = acquisition };
        var examination = Given.Examination(pass) with { Part = new Part(Curvature.Flat, Steel, Steel) };
        return new Study(examination).At(new Length(20), null).Passes[0].Acquisition;
    }
}
