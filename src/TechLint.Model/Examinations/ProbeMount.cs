using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

/// <summary>Puts a probe on its wedge at its station.</summary>
internal sealed class ProbeMount(EquipmentPool pool, Gathering gathering, FrameItem? frame)
{
    private const string WhatFor = "The beam";

    public MountedProbe? Build(ProbeUse use)
    {
        var station = gathering.Need(use.Station, WhatFor);
        var side = gathering.Need(use.Side, WhatFor);
        var offset = gathering.NeedLength(use.IndexOffset, WhatFor);
        var probe = Named<ProbeItem>(EquipmentKind.Probe, use.Probe);
        var wedge = Named<WedgeItem>(EquipmentKind.Wedge, use.Wedge);
        if (probe is null || wedge is null) return null;
        var transducer = OfLibrary(use.Probe, inner => BuildTransducer(probe, inner));
        var mounted = OfLibrary(use.Wedge, inner => BuildWedge(wedge, probe, inner));
        if (transducer is null || mounted is null) return null;
        if (mounted.Longitudinal is null) gathering.Stop(Obstacle.Reported(use.Wedge.Span, use.Wedge.Path));
        var along = frame?.Stations.Items.FirstOrDefault(item => item.Station.IsKnown && item.Station.Value == station)?.Along ?? default;
        return new MountedProbe(
            station, side, offset, along.IsKnown ? new Length(along.Value.InBase) : default, default, transducer, mounted);
    }

    /// <summary>
    /// What a library's entry lacks is told in the library; here, where the technique rests on it, it is told that the beams are not computed. The
    /// characters of another file mean nothing in this one.
    /// </summary>
    private T? OfLibrary<T>(Bound<string> name, Func<Gathering, T> build) where T : class
    {
        var inner = new Gathering();
        var made = build(inner);
        if (!inner.Failed) return made;
        gathering.Stop(new Obstacle(
            $"{name.Value} is not complete in its equipment library, and its beams are not computed: coverage is not checked", name.Span, name.Path));
        return null;
    }

    private T? Named<T>(EquipmentKind kind, Bound<string> name) where T : EquipmentItem
    {
        if (gathering.Need(name, WhatFor) is not { } id) return null;
        var item = pool.Find<T>(kind, id);
        if (item is null) gathering.Stop(Obstacle.Reported(name.Span, name.Path));
        return item;
    }

    private static Transducer BuildTransducer(ProbeItem probe, Gathering gathering)
    {
        var map = probe.Map;
        var kind = gathering.Need(probe.Type, WhatFor);
        var frequency = new Frequency(gathering.Need(map.Quantity("frequency"), WhatFor).InBaseOrZero());
        var bandwidth = gathering.AllowNull(map.Quantity("bandwidth"), static value => new Share(value));
        var pulse = gathering.AllowNull(map.Quantity("pulse-length"), static value => new Duration(value));
        Length? separation = kind is TransducerKind.DualPhasedArray or TransducerKind.DualElement ? gathering.NeedLength(map.Quantity("separation"), WhatFor) : null;
        if (kind is TransducerKind.PhasedArray or TransducerKind.DualPhasedArray)
        {
            var pitch = gathering.NeedLength(map.Quantity("pitch"), WhatFor);
            var gap = gathering.AllowLength(map.Quantity("gap"));
            return new Transducer(
                kind, frequency, bandwidth, pulse, gathering.Need(map.Integer("elements"), WhatFor), pitch, gap,
                gathering.NeedLength(map.Quantity("elevation"), WhatFor), new Length(pitch.Millimetres - gap.Millimetres), IsRound: false)
            {
                Separation = separation,
            };
        }

        var isRound = gathering.Allow(map.Text("shape"), "round") is not "rectangular";
        var along = gathering.NeedLength(map.Quantity(isRound ? "diameter" : "length"), WhatFor);
        var across = isRound ? along : gathering.NeedLength(map.Quantity("width"), WhatFor);
        return new Transducer(kind, frequency, bandwidth, pulse, 1, along, default, across, along, isRound) { Separation = separation };
    }

    private Wedge BuildWedge(WedgeItem wedge, ProbeItem probe, Gathering gathering)
    {
        var map = wedge.Map;
        var place = map.Map("first-element");
        var kind = probe.Type.Or(TransducerKind.SingleElement);
        if (kind is TransducerKind.PhasedArray or TransducerKind.DualPhasedArray)
        {
            gathering.Need(map.Quantity("angle"), WhatFor);
            gathering.NeedLength(place.Quantity("height"), WhatFor);
        }

        // A wedge may serve single and dual probes; only under a dual one its roof is asked for.
        Angle? roof = kind is TransducerKind.DualPhasedArray or TransducerKind.DualElement
            ? new Angle(gathering.Need(map.Quantity("roof-angle"), WhatFor).InBaseOrZero())
            : null;
        var contour = map.Map("contour");
        var indexPoint = map.Map("index-point").Quantity("behind-front");
        return new Wedge(
            wedge.Material.Or(null) ?? "", SpeedOf(wedge), gathering.AllowNull(map.Quantity("angle"), static value => new Angle(value)),
            place.IsKnown
                ? new ElementPlace(gathering.NeedLength(place.Quantity("height"), WhatFor), gathering.NeedLength(place.Quantity("behind-front"), WhatFor))
                : null,
            map.Text("element-one").Or(null) is "front", gathering.AllowNull(map.Quantity("refracted-angle"), static value => new Angle(value)),
            gathering.Allow(map.Word("wave", Words.Waves), Wave.Transverse), gathering.AllowNull(indexPoint, static value => new Length(value)),
            gathering.AllowNull(map.Quantity("path"), static value => new Length(value)), gathering.NeedLength(map.Quantity("length"), WhatFor),
            gathering.NeedLength(map.Quantity("width"), WhatFor),
            contour.IsKnown ? gathering.AllowNull(contour.Quantity("outside-diameter"), static value => new Length(value)) : null,
            contour.IsKnown ? gathering.Allow(contour.Word("curved", Words.ContourDirections), ContourDirection.AlongBeam) : ContourDirection.AlongBeam)
        {
            RoofAngle = roof,
        };
    }

    /// <summary>The wedge's own velocity, a material of the libraries, or a built-in one; null where none is known.</summary>
    private Speed? SpeedOf(WedgeItem wedge)
    {
        var stated = wedge.Map.Quantity("velocity");
        if (stated.IsKnown) return new Speed(stated.Value.InBase);
        if (!wedge.Material.TryGet(out var name)) return null;
        return pool.Find<MaterialItem>(EquipmentKind.Material, name) is { Longitudinal: { IsKnown: true, Value: var speed } }
            ? new Speed(speed.InBase)
            : BuiltInMaterials.Find(name)?.Longitudinal;
    }
}
