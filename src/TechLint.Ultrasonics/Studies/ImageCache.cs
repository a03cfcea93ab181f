using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;

namespace TechLint.Ultrasonics.Studies;

/// <summary>The images of one search, worked out once for each wall, place and turn of their probe: an error of the other side's probes leaves them as they are.</summary>
internal sealed class ImageCache
{
    private readonly Dictionary<Key, SidedSight?> known = [];

    private readonly record struct Key(string Pass, string Beam, double Wall, double? OutsideDiameter, double Offset, double Skew);

    public ImmutableArray<SidedSight> Of(PassSection section, double leftError, double rightError, double skewError)
    {
        ImmutableArray<SidedSight>.Builder? sights = null;
        foreach (var beam in section.Pass.Beams)
        {
            if (beam.Scan != ScanKind.TotalFocusing || Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) continue;
            var error = probe.Side == Side.Left ? leftError : rightError;
            var key = new Key(section.Pass.Id, beam.Id, section.Thickness, section.OutsideDiameter, probe.IndexOffset.Millimetres + error, skewError);
            if (!known.TryGetValue(key, out var sight)) known.Add(key, sight = ImageWork.SightOf(section, beam, probe, error, skewError));
            if (sight is not null) (sights ??= ImmutableArray.CreateBuilder<SidedSight>()).Add(sight);
        }

        return sights?.ToImmutable() ?? [];
    }
}
