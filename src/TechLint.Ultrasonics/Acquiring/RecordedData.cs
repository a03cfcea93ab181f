using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>Bytes of one recorded position: over all beams lines × samples × bytes a sample; samples = recorded time × digitising rate.</summary>
internal static class RecordedData
{
    /// <summary>A product this close over a whole number of samples is rounding.</summary>
    private const double SampleSlack = 1e-6;

    /// <summary>Null where a beam's window, speed or the digitising rate is not known.</summary>
    public static double? BytesPerPosition(PassSection section, Acquisition acquisition, IReadOnlyDictionary<string, Duration?> pairTimes)
    {
        if (acquisition.DigitisingRate is not { } rate || acquisition.BytesPerSample < 1) return null;
        var bytes = 0.0;
        var captures = new HashSet<(string, int?)>();
        foreach (var beam in section.Pass.Beams)
        {
            if (beam.Scan == ScanKind.TotalFocusing && beam.Capture is { } capture && !captures.Add((capture, beam.From))) continue;
            if (Pulses.Lines(section.Pass, beam) is not { } lines) return null;
            if (lines.Lines == 0) continue;
            var time = beam.Scan == ScanKind.Tofd ? pairTimes.GetValueOrDefault(beam.Id) : TimeOf(section, beam);
            if (time is not { } recorded) return null;
            bytes += lines.Lines * SamplesOf(recorded, rate) * acquisition.BytesPerSample;
        }

        return bytes;
    }

    public static double SamplesOf(Duration time, Frequency rate) => Math.Ceiling((time.Microseconds * rate.Megahertz) - SampleSlack);

    /// <summary>There and back over the recorded sound path.</summary>
    private static Duration? TimeOf(PassSection section, Beam beam)
    {
        if (beam.PathWindow is not { To: { } end } window || Pulses.ProbeAt(section.Pass, beam.From ?? beam.Transmit) is not { } probe) return null;
        var speeds = section.SpeedsOn(probe.Side);
        var speed = beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal;
        var path = end.Millimetres - (window.From?.Millimetres ?? 0);
        return speed is { MetresPerSecond: > 0 } known && path > 0 ? Duration.FromSeconds(2 * path / known.MillimetresPerSecond) : null;
    }
}
