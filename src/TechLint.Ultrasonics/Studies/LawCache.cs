using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// The laws of one search over thickness, tolerance and index offset. Scanned from outside they do not know the wall; and a probe that is moved along the
/// surface takes its laws with it, exit points and all. Not thread-safe: one search is one thread's.
/// </summary>
internal sealed class LawCache
{
    private readonly Dictionary<Key, ImmutableArray<(MountedProbe Probe, SightLine Line)>> known = [];

    private readonly record struct Key(string Pass, double? OutsideDiameter, double Wall, double Skew, SpeedErrors Speeds);

    /// <summary>The laws at the places that the section's probes have. A focus on a vertical line depends on where the probe stands: such a pass must not be moved.</summary>
    public ImmutableArray<(MountedProbe Probe, SightLine Line)> Of(PassSection section, double skewError, SpeedErrors speeds)
    {
        // A depth below the wall counts in the next legs, unfolded: such a focus knows the wall.
        var knowsWall = section.IsInside || section.Pass.Beams.Any(beam => beam.Focus.Kind != FocusKind.None && beam.Focus.Kind != FocusKind.Path);
        var key = new Key(section.Pass.Id, section.OutsideDiameter, knowsWall ? section.Thickness : 0, skewError, speeds);
        if (!known.TryGetValue(key, out var lines)) known.Add(key, lines = DriftedLaws.Of(section, skewError, speeds));
        return lines;
    }
}
