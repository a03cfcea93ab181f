using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Model.Techniques;

/// <summary>Turns a technique's tree into its typed form. Says nothing: problems come from the shape checker.</summary>
public static class TechniqueBinder
{
    public static Technique Bind(SyntaxTree tree, ShapeCheck? check)
    {
        var root = MapReader.Of(tree, check);
        return new Technique(
            tree, root.Text("technique"), root.Word("status", Words.Statuses), root.Texts("requirements"), root.Texts("equipment"),
            BindComponent(root.Map("component")), BindWeld(root.Map("weld")), BindExtent(root.Map("examination")),
            Each(root.Maps("setups"), BindSetup), Each(root.Maps("references"), BindReference), BindBlockUses(root),
            Each(root.Maps("waivers"), BindWaiver))
        {
            VelocityTolerance = root.Map("checks").Map("velocity-and-delay").Quantity("tolerance"),
        };
    }

    private static Component BindComponent(MapReader map)
    {
        var sides = map.Map("thickness");
        var bySide = sides.IsKnown && (sides.Has("left") || sides.Has("right"));
        return new(map, map.Word("form", Words.Forms), Sided(map, "material"), map.Band("thickness"), bySide, map.Band("outside-diameter"),
            map.Map("scanning-surface").Word("side", Words.Surfaces));
    }

    private static SidedText Sided(MapReader map, string key)
    {
        var sides = map.Map(key);
        if (sides.IsKnown) return new(sides.Text("left"), sides.Text("right"));
        var both = map.Text(key);
        return new(both, both);
    }

    private static Weld BindWeld(MapReader map)
    {
        var preparation = map.Map("preparation");
        return new(map, map.Word("joint", Words.Joints), map.Word("orientation", Words.Orientations), map.Quantity("length"), preparation,
            preparation.Word("shape", Words.Preparations), map.Map("cap"), map.Map("root"));
    }

    private static Extent BindExtent(MapReader map)
    {
        var volume = map.Map("volume");
        return new(map, volume.Quantity("beside-weld"), volume.Band("depth"), map.Word("sides", Words.ExaminedSides));
    }

    private static Setup BindSetup(MapReader map)
    {
        var served = map.Map("for");
        var tolerance = map.Map("positioning-tolerance");
        return new(map, map.Text("id"), served.Band("thickness"), served.Band("outside-diameter"), map.Integer("pass"), map.Text("frame"),
            map.Word("scanning-surface", Words.Surfaces), tolerance.Quantity("index-offset"), tolerance.Quantity("skew"),
            Each(map.Maps("probes", "station"), BindProbe), Each(map.Maps("beams"), BindBeam), map.Map("acquisition"));
    }

    private static ProbeUse BindProbe(MapReader map) => new(
        map, map.Integer("station"), map.Text("probe"), map.Text("wedge"), map.Word("side", Words.Sides), map.Quantity("index-offset"));

    private static BeamSetting BindBeam(MapReader map) => new(
        map, map.Text("id"), map.Word("scan", Words.Scans), map.Integer("from"), map.Integer("transmit"), map.Integer("receive"),
        map.Word("wave", Words.Waves), map.Text("reference"));

    private static ReferenceSetting BindReference(MapReader map) => new(
        map, map.Text("id"), map.Word("method", Words.ReferenceMethods), map.Text("block"), map.Texts("reflectors"));

    private static Waiver BindWaiver(MapReader map) => new(
        map, map.Text("rule"), map.Text("at"), map.Text("reason"), map.Text("approved-by"), map.Date("until"));

    private static ImmutableArray<BlockUse> BindBlockUses(MapReader root)
    {
        var checks = root.Map("checks");
        var demonstration = root.Map("demonstration").Text("block");
        return
        [
            .. checks.Keys.Select(key => checks.Map(key.Key).Text("block")).Append(demonstration)
                .Where(block => !block.IsMissing).Select(block => new BlockUse(block)),
        ];
    }

    internal static BoundList<T> Each<T>(BoundList<MapReader> maps, Func<MapReader, T> bind) =>
        new(maps.Presence, [.. maps.Items.Select(bind)], maps.Span, maps.Path);
}
