using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Syntax;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Equipment;

public enum EquipmentKind { Probe, Wedge, Frame, Instrument, Encoder, Material, Block }

/// <summary>One equipment library. Items keep the author's order.</summary>
public sealed record Library(
    SyntaxTree Tree, Bound<string> Id, BoundList<ProbeItem> Probes, BoundList<WedgeItem> Wedges, BoundList<FrameItem> Frames,
    BoundList<InstrumentItem> Instruments, BoundList<EquipmentItem> Encoders, BoundList<MaterialItem> Materials, BoundList<BlockItem> Blocks)
{
    public string File => Tree.Source.Path;

    public IEnumerable<EquipmentItem> Items =>
        [.. Probes.Items, .. Wedges.Items, .. Frames.Items, .. Instruments.Items, .. Encoders.Items, .. Materials.Items, .. Blocks.Items];
}

/// <summary>Anything in a library that can be named.</summary>
public record EquipmentItem(EquipmentKind Kind, MapReader Map, Bound<string> Id);

public sealed record ProbeItem(MapReader Map, Bound<string> Id, Bound<TransducerKind> Type) : EquipmentItem(EquipmentKind.Probe, Map, Id);

public sealed record WedgeItem(MapReader Map, Bound<string> Id, BoundList<Bound<string>> Fits, Bound<string> Material)
    : EquipmentItem(EquipmentKind.Wedge, Map, Id);

public sealed record FrameItem(
    MapReader Map, Bound<string> Id, Bound<QuantityBand> IndexOffset, BoundList<StationItem> Stations, BoundList<FrameLimit> Limits)
    : EquipmentItem(EquipmentKind.Frame, Map, Id);

public sealed record StationItem(MapReader Map, Bound<int> Station, Bound<Quantity> Along);

/// <summary>How many probes the frame carries where: an orientation or form left out means any; a diameter left out means any, flat included.</summary>
public sealed record FrameLimit(
    MapReader Map, Bound<WeldOrientation> Orientation, Bound<ComponentForm> Form, Bound<int> Probes, Bound<QuantityBand> OutsideDiameter);

public sealed record InstrumentItem(MapReader Map, Bound<string> Id) : EquipmentItem(EquipmentKind.Instrument, Map, Id);

public sealed record MaterialItem(
    MapReader Map, Bound<string> Id, Bound<Quantity> Longitudinal, Bound<Quantity> Transverse) : EquipmentItem(EquipmentKind.Material, Map, Id);

public sealed record BlockItem(
    MapReader Map, Bound<string> Id, Bound<string> Material, Bound<ComponentForm> Form, Bound<Quantity> Thickness,
    Bound<Quantity> OutsideDiameter, BoundList<Reflector> Reflectors) : EquipmentItem(EquipmentKind.Block, Map, Id);

/// <param name="Depth">Of a hole: of its centre below the scanning surface. Of a notch: its height, as a length or a share.</param>
public sealed record Reflector(MapReader Map, Bound<string> Id, Bound<ReflectorKind> Kind, Bound<Quantity> Depth, Bound<Surface> Surface);
