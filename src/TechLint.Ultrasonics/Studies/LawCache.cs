using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// The laws of one search over thickness, tolerance and index offset. Scanned from outside they do not know the wall; and a probe that is moved along the
/// surface takes its laws with it, exit points and all. Not thread-safe: one search is one thread's.
/// </summary>
internal sealed class LawCache
{
    private readonly Dictionary<Key, ImmutableArray<(MountedProbe Probe, SightLine Line)>> known = [];

    private readonly record struct Key(string Pass, double? OutsideDiameter, double Wall, double Skew);

    /// <summary>The laws at the places that the section's probes have.</summary>
    public ImmutableArray<(MountedProbe Probe, SightLine Line)> Of(PassSection section, double skewError)
    {
        // A focus on a vertical line depends on where the probe stands.
        if (section.Pass.Beams.Any(beam => beam.Focus.Kind == FocusKind.Across)) return PassSights.LinesOf(section, skewError);
        var key = new Key(section.Pass.Id, section.OutsideDiameter, section.IsInside ? section.Thickness : 0, skewError);
        if (!known.TryGetValue(key, out var lines)) known.Add(key, lines = PassSights.LinesOf(section, skewError));
        return Placed(section.Pass, lines);
    }

    /// <summary>Each law moved by as much as its probe stands elsewhere than when the law was worked out.</summary>
    private static ImmutableArray<(MountedProbe Probe, SightLine Line)> Placed(Pass pass, ImmutableArray<(MountedProbe Probe, SightLine Line)> lines)
    {
        var moved = pass.Probes.Where(probe => lines.Any(line => line.Probe.Station == probe.Station && line.Probe.IndexOffset != probe.IndexOffset))
            .ToDictionary(probe => probe.Station);
        if (moved.Count == 0) return lines;
        return
        [
            .. lines.Select(line => !moved.TryGetValue(line.Probe.Station, out var probe) ? line
                : (probe, line.Line with { ExitY = line.Line.ExitY + PassSights.Outward(probe.Side, probe.IndexOffset.Millimetres - line.Probe.IndexOffset.Millimetres) })),
        ];
    }
}
