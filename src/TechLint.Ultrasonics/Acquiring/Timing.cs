using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>
/// What a pass takes. The instrument works through one sequence of pulses over all laws and beams of the frame at every position: speed at most = pulse rate × increment / pulses per position; scan time at the stated speed (else that);
/// data rate at the stated speed, in 10⁶ bytes a second; data size = bytes per position × positions.
/// </summary>
internal static class Timing
{
    private const double BytesPerMegabyte = 1e6;

    /// <summary>A length that is a whole number of increments but for rounding needs no further line.</summary>
    private const double LineSlack = 1e-9;

    /// <summary>Beyond this a count is a slip of a unit.</summary>
    private const double MostLines = 1e15;

    /// <param name="section">The pass at one case.</param>
    /// <param name="beams">Its beams, worked out: their laws tell the way in the wedge.</param>
    /// <param name="pairTimes">Recorded time of each diffraction pair, by the beam's id.</param>
    public static AcquisitionStudy Of(
        PassSection section, IReadOnlyList<BeamStudy> beams, IReadOnlyDictionary<string, Duration?> pairTimes)
    {
        if (section.Pass.Acquisition is not { } acquisition) return new AcquisitionStudy(null, null, null, null, null, null);
        var pulses = Pulses.PerPosition(section.Pass, acquisition.Averaging);
        var increment = acquisition.Increment is { Millimetres: > 0 } step ? step.Millimetres : (double?)null;
        var fastest = acquisition.PulseRate?.Hertz * increment / pulses;
        var way = ScanLength.In(section, acquisition);
        var length = way?.Length;
        var speed = acquisition.Speed?.MillimetresPerSecond;
        var intervals = PulseInterval.Of(section, beams);
        var grid = EncoderGrid.Of(acquisition.EncoderResolution, acquisition.Increment);
        var bytes = RecordedData.BytesPerPosition(section, acquisition, pairTimes);
        return new AcquisitionStudy(
            pulses,
            fastest is { } atMost ? Speed.FromMillimetresPerSecond(atMost) : null,
            length is { } reach ? new Length(reach) : null,
            length / (speed ?? fastest) is { } time && double.IsFinite(time) ? Duration.FromSeconds(time) : null,
            bytes * speed / increment / BytesPerMegabyte is { } rate ? new DataRate(rate) : null,
            bytes * length / increment / BytesPerMegabyte is { } size ? new DataSize(size) : null)
        {
            PulseRateAtMost = PulseInterval.RateAtMost(intervals, acquisition),
            AmbiguityPath = PulseInterval.AmbiguityPath(intervals, acquisition.PulseRate),
            Segments = way?.Segments,
            Lines = LinesOf(way, acquisition.SegmentAtMost, increment),
            StepsPerIncrement = grid?.StepsPerIncrement,
            PositionErrorAtMost = grid?.PositionErrorAtMost,
            Increments = grid?.Increments,
            SpeedAtMostForData = acquisition.InstrumentDataRateAtMost?.MegabytesPerSecond * BytesPerMegabyte * increment / bytes is { } limit
                && double.IsFinite(limit) ? Speed.FromMillimetresPerSecond(limit) : null,
        };
    }

    /// <summary>Every segment starts with a line of its own.</summary>
    private static long? LinesOf((double Length, int Segments)? way, Length? segmentAtMost, double? increment)
    {
        if (way is not { } known || increment is not { } step) return null;
        var whole = known.Segments > 1 ? segmentAtMost!.Value.Millimetres : 0;
        var lines = ((known.Segments - 1) * LinesIn(whole, step)) + LinesIn(known.Length - ((known.Segments - 1) * whole), step);
        return lines < MostLines ? (long)lines : null;
    }

    private static double LinesIn(double length, double step) => Math.Ceiling((length / step) - LineSlack) + 1;
}
