using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

internal static class AcquisitionBuilder
{
    /// <summary>Where the instrument does not say how it stores a sample: 16 bit.</summary>
    private const int CommonBytesPerSample = 2;

    public static Acquisition? Build(Technique technique, Setup setup, EquipmentPool pool, Gathering gathering)
    {
        var map = setup.Acquisition;
        if (!map.IsKnown) return null;
        var instrument = map.Text("instrument").TryGet(out var id) ? pool.Find<InstrumentItem>(EquipmentKind.Instrument, id) : null;
        var isGirth = technique.Weld.Orientation.Or(WeldOrientation.Longitudinal) == WeldOrientation.Circumferential
            && technique.Component.OutsideDiameter.IsKnown;
        return new Acquisition(
            gathering.AllowNull(map.Quantity("increment"), static value => new Length(value)),
            gathering.AllowNull(map.Quantity("speed"), static value => new Speed(value)),
            gathering.AllowNull(map.Quantity("pulse-rate"), static value => new Frequency(value)), gathering.Allow(map.Integer("averaging"), 1),
            gathering.AllowNull(map.Quantity("digitising-rate"), static value => new Frequency(value)),
            instrument?.Map.Integer("bytes-per-sample") is { IsKnown: true, Value: var bytes } ? bytes : CommonBytesPerSample,
            isGirth ? null : gathering.AllowNull(technique.Weld.Length, static value => new Length(value)),
            gathering.AllowLength(map.Quantity("run-on")), gathering.AllowLength(map.Quantity("run-off")),
            gathering.AllowLength(map.Quantity("overlap")),
            gathering.AllowNull(map.Quantity("segment-at-most"), static value => new Length(value)))
        {
            EncoderResolution = OfLibrary(EncoderOf(setup, pool)?.Map, "resolution", static value => new EncoderResolution(value)),
            InstrumentPulseRateAtMost = OfLibrary(instrument?.Map, "pulse-rate-at-most", static value => new Frequency(value)),
            InstrumentDataRateAtMost = OfLibrary(instrument?.Map, "data-rate-at-most", static value => new DataRate(value)),
            Recovery = OfLibrary(instrument?.Map, "recovery", static value => new Duration(value)) ?? default,
        };
    }

    /// <summary>The encoder that the acquisition names, else the frame's own.</summary>
    private static EquipmentItem? EncoderOf(Setup setup, EquipmentPool pool)
    {
        if (setup.Acquisition.Text("encoder").TryGet(out var named)) return pool.Find<EquipmentItem>(EquipmentKind.Encoder, named);
        return setup.Frame.TryGet(out var id) && pool.Find<FrameItem>(EquipmentKind.Frame, id) is { } frame && frame.Map.Text("encoder").TryGet(out var own)
            ? pool.Find<EquipmentItem>(EquipmentKind.Encoder, own)
            : null;
    }

    /// <summary>What a library does not state, or states in a way that cannot be read, is told of there; here it is unknown.</summary>
    private static T? OfLibrary<T>(MapReader? map, string key, Func<double, T> make) where T : struct =>
        map?.Quantity(key) is { IsKnown: true, Value: var value } ? make(value.InBase) : null;
}
