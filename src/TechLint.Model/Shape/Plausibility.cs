using System.Collections.Frozen;
using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>What the trade would expect of a quantity at one place.</summary>
/// <param name="Kind">The kind of quantity that the band is for.</param>
/// <param name="Least">In the kind's base unit.</param>
/// <param name="Most">In the kind's base unit.</param>
/// <param name="Expectation">The same in words, such as <c>walls of 1 mm to 300 mm</c>.</param>
public sealed record PlausibleBand(QuantityKind Kind, decimal Least, decimal Most, string Expectation)
{
    public bool Holds(decimal value) => value >= Least && value <= Most;
}

/// <summary>
/// Bands that catch slips of a decimal place or of inch for millimetre: 12 in walls, 50 MHz probes, sound of 5 mm/s. They are wide on
/// purpose, and are no requirement: all are common practice, without a source. Keyed by kind of file and path of keys; list entries add no step
/// to the path, and a band holds for the ends of a range and for both sides too.
/// </summary>
public static class Plausibility
{
    private static readonly (string Path, string Least, string Most, string What)[] Table =
    [
        ("technique/component/thickness", "1 mm", "300 mm", "walls"),
        ("technique/component/outside-diameter", "10 mm", "120 m", "outside diameters"),
        ("technique/component/surface-temperature", "-60 degC", "600 degC", "surface temperatures"),
        ("technique/component/scanning-surface/roughness", "0.1 um", "200 um", "roughnesses"),
        ("technique/component/scanning-surface/clear-width", "10 mm", "10 m", "clear widths"),
        ("technique/component/coating/thickness", "0.005 mm", "10 mm", "coatings"),
        ("technique/component/coating/velocity", "500 m/s", "7000 m/s", "sound velocities in coatings"),
        ("technique/weld/length", "10 mm", "1000 m", "seams"),
        ("technique/weld/preparation/root-face", "0 mm", "100 mm", "root faces"),
        ("technique/weld/preparation/root-gap", "0 mm", "40 mm", "root gaps"),
        ("technique/weld/preparation/misalignment-at-most", "0 mm", "20 mm", "misalignments"),
        ("technique/weld/preparation/bond-line/width", "0 mm", "20 mm", "bond lines"),
        ("technique/weld/cap/width", "0 mm", "300 mm", "caps"),
        ("technique/weld/cap/height", "0 mm", "15 mm", "reinforcements"),
        ("technique/weld/root/width", "0 mm", "300 mm", "roots"),
        ("technique/weld/root/height", "0 mm", "15 mm", "reinforcements"),
        ("technique/weld/heat-affected-zone", "0 mm", "50 mm", "heat-affected zones"),
        ("technique/examination/volume/beside-weld", "0 mm", "200 mm", "margins beside the weld"),
        ("technique/examination/waiting-time", "0 h", "60 d", "waiting times"),
        ("technique/setups/for/thickness", "1 mm", "300 mm", "walls"),
        ("technique/setups/for/outside-diameter", "10 mm", "120 m", "outside diameters"),
        ("technique/setups/positioning-tolerance/index-offset", "0 mm", "10 mm", "tolerances of the index offset"),
        ("technique/setups/movement/line-spacing", "0.1 mm", "100 mm", "spacings of lines"),
        ("technique/setups/probes/index-offset", "-150 mm", "600 mm", "index offsets"),
        ("technique/setups/beams/angles/step", "0.05 deg", "10 deg", "steps between angles"),
        ("technique/setups/beams/focus/path", "1 mm", "2000 mm", "focal paths"),
        ("technique/setups/beams/focus/depth", "1 mm", "1000 mm", "focal depths"),
        ("technique/setups/beams/probe-centre-separation", "5 mm", "1500 mm", "probe centre separations"),
        ("technique/setups/beams/grid", "0.01 mm", "20 mm", "grids"),
        ("technique/setups/beams/window/from", "0 mm", "5000 mm", "sound paths"),
        ("technique/setups/beams/window/to", "1 mm", "5000 mm", "sound paths"),
        ("technique/setups/beams/window/before-lateral-wave", "0 us", "50 us", "times before the lateral wave"),
        ("technique/setups/beams/window/after-back-wall", "0 us", "200 us", "times after the back wall"),
        ("technique/setups/beams/loss-at-most", "0.5 dB", "40 dB", "losses of contact"),
        ("technique/setups/acquisition/run-on", "0 mm", "2000 mm", "run-ons"),
        ("technique/setups/acquisition/run-off", "0 mm", "2000 mm", "run-offs"),
        ("technique/setups/acquisition/overlap", "0 mm", "1000 mm", "overlaps"),
        ("technique/setups/acquisition/increment", "0.05 mm", "20 mm", "increments"),
        ("technique/setups/acquisition/speed", "0.1 mm/s", "1000 mm/s", "scanning speeds"),
        ("technique/setups/acquisition/pulse-rate", "10 Hz", "100 kHz", "pulse rates"),
        ("technique/setups/acquisition/digitising-rate", "1 MHz", "2000 MHz", "digitising rates"),
        ("technique/references/scanning-gain", "-40 dB", "60 dB", "scanning gains"),
        ("technique/references/temperature", "-60 degC", "600 degC", "block temperatures"),
        ("technique/checks/encoder/over", "50 mm", "20 m", "lengths of an encoder check"),
        ("technique/checks/transfer/at-most", "0 dB", "40 dB", "transfer corrections"),
        ("technique/records/retain", "1 d", "150 years", "times of retention"),

        ("equipment/probes/frequency", "0.2 MHz", "25 MHz", "probe frequencies"),
        ("equipment/probes/bandwidth", "5 %", "200 %", "bandwidths"),
        ("equipment/probes/pulse-length", "0.02 us", "10 us", "pulses"),
        ("equipment/probes/pitch", "0.05 mm", "10 mm", "pitches"),
        ("equipment/probes/gap", "0 mm", "1 mm", "gaps between elements"),
        ("equipment/probes/elevation", "0.5 mm", "60 mm", "elevations"),
        ("equipment/probes/diameter", "1 mm", "60 mm", "element diameters"),
        ("equipment/probes/length", "1 mm", "60 mm", "elements"),
        ("equipment/probes/width", "1 mm", "60 mm", "elements"),
        ("equipment/probes/separation", "0.5 mm", "200 mm", "separations"),
        ("equipment/wedges/velocity", "500 m/s", "7000 m/s", "sound velocities in wedges"),
        ("equipment/wedges/first-element/height", "0.2 mm", "150 mm", "heights of the first element"),
        ("equipment/wedges/first-element/behind-front", "0 mm", "300 mm", "distances behind the front face"),
        ("equipment/wedges/index-point/behind-front", "0 mm", "300 mm", "distances behind the front face"),
        ("equipment/wedges/path", "0 mm", "200 mm", "paths in a wedge"),
        ("equipment/wedges/length", "3 mm", "300 mm", "wedges"),
        ("equipment/wedges/width", "3 mm", "200 mm", "wedges"),
        ("equipment/wedges/contour/outside-diameter", "10 mm", "10 m", "contours"),
        ("equipment/frames/index-offset", "-300 mm", "2000 mm", "index offsets"),
        ("equipment/frames/stations/along", "-2000 mm", "2000 mm", "stations along the weld"),
        ("equipment/frames/limits/outside-diameter", "5 mm", "120 m", "outside diameters"),
        ("equipment/instruments/pulse-rate-at-most", "10 Hz", "500 kHz", "pulse rates"),
        ("equipment/instruments/digitising-rate", "1 MHz", "2000 MHz", "digitising rates"),
        ("equipment/instruments/data-rate-at-most", "0.1 MB/s", "20000 MB/s", "flows of data"),
        ("equipment/instruments/recovery", "0 us", "10 ms", "recovery times"),
        ("equipment/encoders/resolution", "0.1 steps/mm", "20000 steps/mm", "resolutions"),
        ("equipment/couplants/temperature", "-100 degC", "800 degC", "working temperatures"),
        ("equipment/materials/longitudinal", "500 m/s", "15000 m/s", "sound velocities"),
        ("equipment/materials/transverse", "200 m/s", "10000 m/s", "sound velocities"),
        ("equipment/materials/density", "300 kg/m3", "25000 kg/m3", "densities"),
        ("equipment/blocks/thickness", "1 mm", "400 mm", "blocks"),
        ("equipment/blocks/outside-diameter", "10 mm", "10 m", "outside diameters"),
        ("equipment/blocks/reflectors/diameter", "0.2 mm", "60 mm", "reflectors"),
        ("equipment/blocks/reflectors/depth", "0.05 mm", "400 mm", "depths of reflectors"),
        ("equipment/blocks/reflectors/width", "0.01 mm", "20 mm", "notches"),
        ("equipment/blocks/reflectors/length", "0.5 mm", "1000 mm", "reflectors"),
        ("equipment/blocks/reflectors/radius", "5 mm", "1000 mm", "radii"),

        ("settings/scope/thickness", "1 mm", "300 mm", "walls"),
        ("settings/scope/outside-diameter", "10 mm", "120 m", "outside diameters"),
    ];

    private static readonly FrozenDictionary<string, ImmutableArray<PlausibleBand>> Bands = Table
        .GroupBy(row => row.Path, StringComparer.Ordinal)
        .ToFrozenDictionary(group => group.Key, group => group.Select(Band).ToImmutableArray(), StringComparer.Ordinal);

    /// <summary>Every path of the table, for the test that each leads to a key.</summary>
    public static IEnumerable<string> Paths => Bands.Keys;

    public static ImmutableArray<PlausibleBand> At(string path) => Bands.GetValueOrDefault(path, []);

    private static PlausibleBand Band((string Path, string Least, string Most, string What) row)
    {
        var least = QuantityParser.Parse(row.Least)!.Value;
        return new PlausibleBand(least.Kind, least.Exact, QuantityParser.Parse(row.Most)!.Value.Exact, $"{row.What} of {row.Least} to {row.Most}");
    }
}
