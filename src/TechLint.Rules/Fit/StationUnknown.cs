using TechLint.Model.Equipment;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Fit;

public sealed class StationUnknown : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "station-unknown", RuleFamily.Fit, Severity.Error,
        "A probe is mounted at a station that the frame does not have, or a beam is taken from a station without a probe.",
        "Nobody can say where along the frame the probe sits, or which probe sends the beam.",
        "Name a station that the frame's entry in the equipment library lists and that carries a probe.");

    public override void Check(TechniqueContext context)
    {
        foreach (var setup in context.Technique.Setups.Items)
        {
            CheckMounts(context, setup);
            if (setup.Probes.IsBroken) continue;
            var mounted = setup.Probes.Items.Where(probe => probe.Station.IsKnown).Select(probe => probe.Station.Value).ToHashSet();
            if (setup.Probes.Items.Any(probe => !probe.Station.IsKnown)) continue;
            foreach (var station in setup.Beams.Items.SelectMany(beam => new[] { beam.From, beam.Transmit, beam.Receive }))
            {
                if (!station.IsKnown || mounted.Contains(station.Value)) continue;
                context.Sink.Report(this, station, $"no probe of {setup.Name} stands at station {station.Value}").With("station", station.Value, "");
            }
        }
    }

    private void CheckMounts(TechniqueContext context, Model.Techniques.Setup setup)
    {
        if (!setup.Frame.TryGet(out var id) || context.Equipment.Find<FrameItem>(EquipmentKind.Frame, id) is not { } frame) return;
        if (frame.Stations.Presence != Model.Binding.Presence.Known || frame.Stations.Items.Any(station => !station.Station.IsKnown)) return;
        foreach (var probe in setup.Probes.Items)
        {
            if (!probe.Station.IsKnown || frame.Stations.Items.Any(station => station.Station.Value == probe.Station.Value)) continue;
            var known = string.Join(", ", frame.Stations.Items.Select(station => station.Station.Value));
            context.Sink.Report(this, probe.Station, $"{id} has no station {probe.Station.Value}: it has {known}")
                .With("station", probe.Station.Value, "")
                .Related(context.Equipment.LibraryOf(frame)!.File, frame.Stations.Span, "the frame's stations");
        }
    }
}
