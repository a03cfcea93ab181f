using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Model.Equipment;

/// <summary>Turns a library's tree into its typed form. Says nothing: problems come from the shape checker.</summary>
public static class LibraryBinder
{
    public static Library Bind(SyntaxTree tree, ShapeCheck? check)
    {
        var root = MapReader.Of(tree, check);
        return new Library(
            tree, root.Text("equipment"),
            TechniqueBinder.Each(root.Maps("probes"), static map => new ProbeItem(map, map.Text("id"), map.Word("kind", Words.Transducers))),
            TechniqueBinder.Each(root.Maps("wedges"), static map => new WedgeItem(map, map.Text("id"), map.Texts("fits"), map.Text("material"))),
            TechniqueBinder.Each(root.Maps("frames"), BindFrame),
            TechniqueBinder.Each(root.Maps("instruments"), static map => new InstrumentItem(map, map.Text("id"))),
            TechniqueBinder.Each(root.Maps("encoders"), static map => new EquipmentItem(EquipmentKind.Encoder, map, map.Text("id"))),
            TechniqueBinder.Each(root.Maps("materials"), static map => new MaterialItem(map, map.Text("id"), map.Quantity("longitudinal"), map.Quantity("transverse"))),
            TechniqueBinder.Each(root.Maps("blocks"), BindBlock));
    }

    private static FrameItem BindFrame(MapReader map) => new(
        map, map.Text("id"), map.Band("index-offset"),
        TechniqueBinder.Each(map.Maps("stations", "station"), static item => new StationItem(item, item.Integer("station"), item.Quantity("along"))),
        TechniqueBinder.Each(map.Maps("limits"), static item => new FrameLimit(
            item, item.Word("orientation", Words.Orientations), item.Word("form", Words.Forms), item.Integer("probes"), item.Band("outside-diameter"))));

    private static BlockItem BindBlock(MapReader map) => new(
        map, map.Text("id"), map.Text("material"), map.Word("form", Words.Forms), map.Quantity("thickness"), map.Quantity("outside-diameter"),
        TechniqueBinder.Each(map.Maps("reflectors"), static item => new Reflector(
            item, item.Text("id"), item.Word("kind", Words.ReflectorKinds), item.Quantity("depth"), item.Word("surface", Words.Surfaces))));
}
