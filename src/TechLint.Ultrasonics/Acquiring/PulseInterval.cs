using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>
/// What happens between two pulses. All beams of a frame share one sequence at one constant rate f, so the interval 1/f must hold the longest
/// signal: there and back in the wedge, to the end of the recorded window in the part, and the instrument's recovery. Hence
/// <c>f ≤ 1 / (max(2 lw/vw + 2 L/v) + recovery)</c> (arithmetic of the time base, as EN 583-1 and every handbook have it: common practice).
/// </summary>
/// <remarks>
/// Ambiguity: an echo of pulse k at the travel time τ shows in the window of pulse k + 1 when τ − 1/f falls into it. The shortest sound path in the part that
/// does so is <c>v (1/f + start of the next window − wedge delay of this beam) / 2</c>, start and delay counted from their own pulses; of all neighbours
/// in the sequence the least counts. A pair's path is half of the way from probe to probe. Averaging repeats a law, so it follows itself.
/// A coupling monitor whose window is not stated is left out: its one echo through the wall comes first.
/// </remarks>
internal static class PulseInterval
{
    /// <summary>Times of one beam after its own pulse, us; the least and greatest over its laws.</summary>
    /// <param name="IsRepeated">One of its pulses follows another of it.</param>
    /// <param name="Speed">In the part, mm/us.</param>
    internal readonly record struct Times(double Delay, double Start, double End, double Speed, bool IsRepeated);

    /// <summary>In the sequence's order; null where the times of a beam are not known.</summary>
    public static IReadOnlyList<Times>? Of(PassSection section, IReadOnlyList<BeamStudy> beams)
    {
        var times = new List<Times>(beams.Count);
        foreach (var beam in beams)
        {
            if (beam.Beam is { Scan: ScanKind.CouplingMonitor, PathWindow: null }) continue;
            if (TimesOf(section, beam) is not { } known) return null;
            times.Add(known);
        }

        return times.Count > 0 ? times : null;
    }

    /// <summary>The lower of what the time base allows and what the instrument gives; null where the first is not known.</summary>
    public static Frequency? RateAtMost(IReadOnlyList<Times>? times, Acquisition acquisition)
    {
        if (times is null) return null;
        var longest = 0.0;
        foreach (var beam in times) longest = Math.Max(longest, beam.End);
        var rate = 1 / (longest + acquisition.Recovery.Microseconds);
        if (!double.IsFinite(rate)) return null;
        return new Frequency(acquisition.InstrumentPulseRateAtMost is { } most ? Math.Min(most.Megahertz, rate) : rate);
    }

    public static Length? AmbiguityPath(IReadOnlyList<Times>? times, Frequency? pulseRate)
    {
        if (times is null || pulseRate is not { Megahertz: > 0 } rate) return null;
        var least = double.PositiveInfinity;
        for (var index = 0; index < times.Count; index++)
        {
            Follow(times[index], times[(index + 1) % times.Count]);
            if (times[index].IsRepeated) Follow(times[index], times[index]);
        }

        return new Length(Math.Max(0, least));

        void Follow(Times beam, Times next) =>
            least = Math.Min(least, beam.Speed * ((1 / rate.Megahertz) + next.Start - beam.Delay) / 2);
    }

    private static Times? TimesOf(PassSection section, BeamStudy study)
    {
        var beam = study.Beam;
        if (Pulses.ProbeAt(section.Pass, beam.From ?? beam.Transmit) is not { } probe || Pulses.Lines(section.Pass, beam) is not { } lines) return null;
        var speeds = section.SpeedsOn(probe.Side);
        if ((beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal)?.MillimetresPerMicrosecond is not > 0) return null;
        var speed = (beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal)!.Value.MillimetresPerMicrosecond;
        if (WedgeDelays(section, study, probe) is not { } delay || WindowOf(section, study, speed) is not { } window) return null;
        var repeats = lines.Pulses * (beam.Averaging ?? section.Pass.Acquisition?.Averaging ?? 1) > 1;
        return new Times(delay.Greatest, delay.Least + window.Start, delay.Greatest + window.End, speed, repeats);
    }

    /// <summary>After the wedge, us.</summary>
    private static (double Start, double End)? WindowOf(PassSection section, BeamStudy study, double speed)
    {
        if (study.Beam.Scan == ScanKind.Tofd)
        {
            return study is { Tofd: { } pair, Beam.TimeWindow: { } window }
                ? (pair.LateralWaveTime.Microseconds - window.BeforeLateralWave.Microseconds,
                    pair.BackWallTime.Microseconds + window.AfterBackWall.Microseconds)
                : null;
        }

        // A scan of the parent metal without a window needs the wall's echo at least.
        var end = study.Beam.PathWindow?.To?.Millimetres ?? (study.Beam.Scan == ScanKind.Lamination ? section.Thickness : (double?)null);
        return end is { } path ? (2 * (study.Beam.PathWindow?.From?.Millimetres ?? 0) / speed, 2 * path / speed) : null;
    }

    /// <summary>There and back in the wedge, or through both wedges of a pair, over the laws that exist.</summary>
    private static (double Least, double Greatest)? WedgeDelays(PassSection section, BeamStudy study, MountedProbe probe)
    {
        if (study.Beam.Receive is { } station && Pulses.ProbeAt(section.Pass, station) is { } receiver)
        {
            if (study.Laws is not [var sent, var received]) return null;
            var both = InWedge(sent, probe) + InWedge(received, receiver);
            return both is { } delay && double.IsFinite(delay) ? (delay, delay) : null;
        }

        var (least, greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var law in study.Laws)
        {
            if (law.Fault != LawFault.None || 2 * InWedge(law, probe) is not { } delay || !double.IsFinite(delay)) continue;
            least = Math.Min(least, delay);
            greatest = Math.Max(greatest, delay);
        }

        return greatest >= least ? (least, greatest) : null;
    }

    private static double? InWedge(LawStudy law, MountedProbe probe) => law.WedgePath.Millimetres / probe.Wedge.Longitudinal?.MillimetresPerMicrosecond;
}
