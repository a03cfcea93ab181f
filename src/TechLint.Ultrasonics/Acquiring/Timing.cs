using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>
/// What a pass takes: speed at most = pulse rate × increment / pulses per position; scan time at the stated speed (else that);
/// data rate at the stated speed, in 10⁶ bytes a second; data size = bytes per position × positions.
/// </summary>
internal static class Timing
{
    private const double BytesPerMegabyte = 1e6;

    /// <param name="section">The pass at one case.</param>
    /// <param name="pairTimes">Recorded time of each diffraction pair, by the beam's id.</param>
    public static AcquisitionStudy Of(PassSection section, IReadOnlyDictionary<string, Duration?> pairTimes)
    {
        if (section.Pass.Acquisition is not { } acquisition) return new AcquisitionStudy(null, null, null, null, null, null);
        var pulses = Pulses.PerPosition(section.Pass, acquisition.Averaging);
        var increment = acquisition.Increment is { Millimetres: > 0 } step ? step.Millimetres : (double?)null;
        var fastest = acquisition.PulseRate?.Hertz * increment / pulses;
        var length = ScanLength.Of(section, acquisition);
        var speed = acquisition.Speed?.MillimetresPerSecond;
        var bytes = RecordedData.BytesPerPosition(section, acquisition, pairTimes);
        return new AcquisitionStudy(
            pulses,
            fastest is { } atMost ? Speed.FromMillimetresPerSecond(atMost) : null,
            length is { } way ? new Length(way) : null,
            length / (speed ?? fastest) is { } time && double.IsFinite(time) ? Duration.FromSeconds(time) : null,
            bytes * speed / increment / BytesPerMegabyte is { } rate ? new DataRate(rate) : null,
            bytes * length / increment / BytesPerMegabyte is { } size ? new DataSize(size) : null);
    }
}
