using System.Globalization;
using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

internal static class BeamBuilder
{
    private const string WhatFor = "The beam";

    /// <summary>Where a sweep leaves its step out.</summary>
    private const double CommonAngleStep = 1;

    public static Beam Build(BeamSetting beam, Setup setup, Gathering gathering)
    {
        var map = beam.Map;
        var scan = gathering.Need(beam.Scan, WhatFor);
        var isPair = scan is ScanKind.Tofd or ScanKind.Tandem;
        var window = map.Map("window");
        var zone = gathering.Allow(map.Band("zone"), default);
        var path = scan == ScanKind.TotalFocusing ? Path(map, gathering) : null;
        return new Beam(
            beam.Name, scan,
            isPair ? null : Station(gathering.Need(beam.From, WhatFor), beam.From, setup, gathering),
            isPair ? Station(gathering.Need(beam.Transmit, WhatFor), beam.Transmit, setup, gathering) : null,
            isPair ? Station(gathering.Need(beam.Receive, WhatFor), beam.Receive, setup, gathering) : null,
            path is null ? gathering.Allow(beam.Wave, WaveOf(scan)) : SlowestOf(path), Angles(map, scan, gathering), Aperture(map.Map("aperture"), gathering),
            Focus(map, gathering), Legs(map, gathering), scan == ScanKind.Tofd ? null : PathWindow(map, gathering),
            scan == ScanKind.Tofd && window.IsKnown
                ? new TimeWindow(
                    gathering.AllowNull(window.Quantity("before-lateral-wave"), static value => new Duration(value)) ?? default,
                    gathering.AllowNull(window.Quantity("after-back-wall"), static value => new Duration(value)) ?? default)
                : null,
            zone.From is { } from ? Gathering.ToDepth(from) : new Depth(0, IsShare: true),
            zone.To is { } to ? Gathering.ToDepth(to) : new Depth(100, IsShare: true),
            gathering.AllowNull(map.Quantity("skew"), static value => new Angle(value)) ?? default,
            map.Integer("averaging") is { IsKnown: true, Value: var averaging } ? averaging : null, map.Text("capture").Or(null))
        {
            ImagingPath = path,
            Region = scan == ScanKind.TotalFocusing ? Region(map.Map("region"), gathering) : null,
            Grid = gathering.AllowNull(map.Quantity("grid"), static value => new Length(value)),
            StatedSeparation = scan == ScanKind.Tofd ? gathering.AllowNull(map.Quantity("probe-centre-separation"), static value => new Length(value)) : null,
        };
    }

    /// <summary>A path that is no path has been told of by the shape checker.</summary>
    private static ImagingPath? Path(MapReader map, Gathering gathering)
    {
        var text = map.Text("imaging-path");
        var path = gathering.Need(text, WhatFor) is { } stated ? ImagingPath.TryParse(stated) : null;
        if (path is null) gathering.Stop(Obstacle.Reported(text.Span, text.Path));
        return path;
    }

    private static ImageRegion? Region(MapReader map, Gathering gathering)
    {
        var across = gathering.Need(map.Band("across"), WhatFor);
        var depth = gathering.Need(map.Band("depth"), WhatFor);
        return across is { From: { } left, To: { } right } && depth is { From: { } upper, To: { } lower }
            ? new ImageRegion(new Length(left.InBase), new Length(right.InBase), Gathering.ToDepth(upper), Gathering.ToDepth(lower))
            : null;
    }

    /// <summary>The wave a beam has where it does not say: 0 degree scans and diffraction are longitudinal.</summary>
    private static Wave WaveOf(ScanKind scan) =>
        scan is ScanKind.Tofd or ScanKind.Lamination or ScanKind.CouplingMonitor ? Wave.Longitudinal : Wave.Transverse;

    /// <summary>An image states its waves by its path; its wavelength is the shortest of them.</summary>
    private static Wave SlowestOf(ImagingPath path) =>
        path.Transmit.Concat(path.Receive).Contains(Wave.Transverse) ? Wave.Transverse : Wave.Longitudinal;

    private static int? Station(int station, Bound<int> place, Setup setup, Gathering gathering)
    {
        var known = setup.Probes.Items.Any(probe => probe.Station.IsKnown && probe.Station.Value == station);
        if (place.IsKnown && !known) gathering.Stop(Obstacle.Reported(place.Span, place.Path));
        return station;
    }

    private static AngleSweep? Angles(MapReader map, ScanKind scan, Gathering gathering)
    {
        if (scan == ScanKind.Sectorial)
        {
            var sweep = gathering.Need(map.Band("angles"), WhatFor);
            if (sweep is not { From: { } from, To: { } to }) return null;
            var step = gathering.AllowNull(map.Map("angles").Quantity("step"), static value => new Angle(value));
            return new AngleSweep(new Angle(from.InBase), new Angle(to.InBase), step ?? new Angle(CommonAngleStep));
        }

        return gathering.AllowNull(map.Quantity("angle"), static value => new Angle(value)) is { } angle ? new AngleSweep(angle, angle, default) : null;
    }

    private static Aperture? Aperture(MapReader map, Gathering gathering)
    {
        if (map.Presence == Presence.Broken) gathering.Stop(Obstacle.Reported(map.Span, map.Path));
        if (!map.IsKnown) return null;
        var first = gathering.Allow(map.Integer("first"), 1);
        var count = gathering.Need(map.Integer("count"), WhatFor);
        return new Aperture(first, count, gathering.Allow(map.Integer("last"), first + count - 1), gathering.Allow(map.Integer("step"), 1));
    }

    private static Focus Focus(MapReader map, Gathering gathering)
    {
        var focus = map.Map("focus");
        if (!focus.IsKnown) return default;
        if (focus.Has("path")) return new(FocusKind.Path, gathering.NeedLength(focus.Quantity("path"), WhatFor));
        if (focus.Has("depth")) return new(FocusKind.Depth, gathering.NeedLength(focus.Quantity("depth"), WhatFor));
        return focus.Has("across") ? new(FocusKind.Across, gathering.NeedLength(focus.Quantity("across"), WhatFor)) : default;
    }

    private static EquatableArray<int> Legs(MapReader map, Gathering gathering)
    {
        var legs = map.Texts("legs");
        if (legs.IsBroken) gathering.Stop(Obstacle.Reported(legs.Span, legs.Path));
        return new(
        [
            .. legs.Items.Select(leg => int.TryParse(leg.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0)
                .Where(leg => leg > 0).Distinct().Order(),
        ]);
    }

    private static Band<Length>? PathWindow(MapReader map, Gathering gathering)
    {
        var window = gathering.Allow(map.Band("window"), default);
        return window.From is null && window.To is null
            ? null
            : new Band<Length>(
                window.From is { } from ? new Length(from.InBase) : null, window.To is { } to ? new Length(to.InBase) : null);
    }
}
