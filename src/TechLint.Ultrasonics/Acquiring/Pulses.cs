using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>
/// Pulses for one recorded line: over all beams laws × averaging. A full-matrix capture takes one pulse an element and counts once
/// for all images made of it; a coupling monitor, a diffraction pair and a lamination scan take one pulse.
/// </summary>
internal static class Pulses
{
    /// <summary>Null where a beam's laws cannot be counted.</summary>
    public static int? PerPosition(Pass pass, int averaging)
    {
        var total = 0L;
        var captures = new HashSet<(string, int?)>();
        foreach (var beam in pass.Beams)
        {
            if (beam.Scan == ScanKind.TotalFocusing && beam.Capture is { } capture && !captures.Add((capture, beam.From))) continue;
            if (Lines(pass, beam) is not { } lines) return null;
            total += (long)lines.Pulses * (beam.Averaging ?? averaging);
        }

        return total is > 0 and <= int.MaxValue ? (int)total : null;
    }

    /// <summary>Pulses and recorded lines (A-scans) of one beam at one position, before averaging.</summary>
    public static (int Pulses, int Lines)? Lines(Pass pass, Beam beam)
    {
        switch (beam.Scan)
        {
            case ScanKind.CouplingMonitor:
                // One pulse; what is kept is an amplitude, no line.
                return (1, 0);
            case ScanKind.Tofd or ScanKind.Tandem or ScanKind.Lamination:
                return (1, 1);
        }

        if (ProbeAt(pass, beam.From) is not { } probe) return null;
        if (beam.Scan != ScanKind.TotalFocusing) return LawCount.Of(beam, probe.Transducer) is { } laws ? (laws, laws) : null;
        var elements = LawCount.FirstAperture(beam, probe.Transducer).Count;
        return elements is > 0 and <= LawCount.Most ? (elements, elements * elements) : null;
    }

    public static MountedProbe? ProbeAt(Pass pass, int? station)
    {
        foreach (var probe in pass.Probes)
        {
            if (probe.Station == station) return probe;
        }

        return null;
    }
}
