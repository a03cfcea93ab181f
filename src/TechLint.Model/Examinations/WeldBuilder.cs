using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

internal static class WeldBuilder
{
    public static WeldSection Build(Weld weld, Gathering gathering)
    {
        var map = weld.Preparation;
        if (map.Presence == Presence.Broken) gathering.Stop(Obstacle.Reported(map.Span, map.Path));
        var shape = gathering.Need(weld.Shape, "The weld's section");
        var faces = map.Map("faces");

        // A preparation of one side may state its group on the side that it opens to.
        var isDouble = shape is PreparationShape.DoubleV or PreparationShape.DoubleU or PreparationShape.DoubleJ;
        var isInnerAlone = !isDouble && map.Has("inner") && !map.Has("outer");
        var preparation = new Preparation(
            shape, gathering.Allow(map.Word("opens", Words.Surfaces), isInnerAlone ? Surface.Inside : Surface.Outside),
            gathering.Allow(map.Word("bevelled-side", Words.Sides), Side.Left),
            Groove(map.Map(isInnerAlone ? "inner" : "outer"), map, shape, gathering), Groove(map.Map("inner"), map, shape, gathering), gathering.AllowLength(map.Quantity("root-face")),
            gathering.AllowLength(map.Quantity("root-gap")), gathering.AllowLength(map.Quantity("misalignment-at-most")),
            gathering.AllowLength(map.Map("bond-line").Quantity("width")), Face(faces, "left", gathering), Face(faces, "right", gathering));
        return new WeldSection(
            preparation, Reinforcement(weld.Cap, gathering), Reinforcement(weld.Root, gathering),
            gathering.AllowNull(weld.Map.Quantity("heat-affected-zone"), static value => new Length(value)));
    }

    /// <summary>A single-sided preparation may state its groove's keys without naming a side.</summary>
    private static Groove Groove(MapReader own, MapReader preparation, PreparationShape shape, Gathering gathering)
    {
        // Between two faces alike the included angle is twice that of each; beside an upright face it is that of the one that is cut.
        var cutFaces = shape is PreparationShape.SingleBevel or PreparationShape.SingleJ or PreparationShape.DoubleJ ? 1 : 2;
        var bevel = Either(own, preparation, "bevel-angle");
        var included = Either(own, preparation, "included-angle");
        var face = bevel.IsKnown || bevel.IsBroken
            ? gathering.AllowNull(bevel, static value => new Angle(value))
            : gathering.AllowNull(included, value => new Angle(value / cutFaces));
        return new Groove(
            face ?? default, gathering.AllowDepth(own.Quantity("depth"), Ultrasonics.Examinations.Groove.None.DepthShare),
            gathering.AllowLength(Either(own, preparation, "radius")),
            gathering.AllowNull(own.Quantity("upper-included-angle"), value => new Angle(value / cutFaces)) ?? default,
            gathering.AllowLength(own.Quantity("break-depth")));
    }

    private static Bound<Quantity> Either(MapReader own, MapReader preparation, string key) => own.Has(key) ? own.Quantity(key) : preparation.Quantity(key);

    private static Reinforcement? Reinforcement(MapReader map, Gathering gathering)
    {
        if (map.Presence == Presence.Broken) gathering.Stop(Obstacle.Reported(map.Span, map.Path));
        return map.IsKnown
            ? new Reinforcement(
                gathering.NeedLength(map.Quantity("width"), "The weld's section"), gathering.NeedLength(map.Quantity("height"), "The weld's section"),
                gathering.AllowLength(map.Quantity("centre")))
            : null;
    }

    private static EquatableArray<SectionPoint> Face(MapReader faces, string side, Gathering gathering) => new(
    [
        .. faces.Maps(side).Items.Select(point => new SectionPoint(
            gathering.AllowDepth(point.Quantity("depth"), default), gathering.AllowLength(point.Quantity("across")))),
    ]);
}
