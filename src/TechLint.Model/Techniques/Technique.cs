using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Syntax;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Techniques;

/// <summary>A technique as far as rules read it today; every value knows its characters and its model path.</summary>
public sealed record Technique(
    SyntaxTree Tree, Bound<string> Id, Bound<TechniqueStatus> Status, BoundList<Bound<string>> Requirements,
    BoundList<Bound<string>> Equipment, Component Component, Weld Weld, Extent Extent, BoundList<Setup> Setups,
    BoundList<ReferenceSetting> References, ImmutableArray<BlockUse> BlockUses, BoundList<Waiver> Waivers)
{
    public string File => Tree.Source.Path;

    /// <summary>What the check of velocity and delay lets pass; missing where there is no such check.</summary>
    public Bound<Quantity> VelocityTolerance { get; init; }
}

public sealed record Component(
    MapReader Map, Bound<ComponentForm> Form, SidedText Material, Bound<QuantityBand> Thickness, bool ThicknessDiffersBySide,
    Bound<QuantityBand> OutsideDiameter, Bound<Surface> ScanningSurface);

/// <summary>One text for both sides, or one for each.</summary>
public sealed record SidedText(Bound<string> Left, Bound<string> Right);

public sealed record Weld(
    MapReader Map, Bound<Joint> Joint, Bound<WeldOrientation> Orientation, Bound<Quantity> Length, MapReader Preparation,
    Bound<PreparationShape> Shape, MapReader Cap, MapReader Root);

/// <summary>The <c>examination</c> key: volume and sides.</summary>
public sealed record Extent(MapReader Map, Bound<Quantity> BesideWeld, Bound<QuantityBand> Depth, Bound<ExaminedSides> Sides);

public sealed record Setup(
    MapReader Map, Bound<string> Id, Bound<QuantityBand> Thickness, Bound<QuantityBand> OutsideDiameter, Bound<int> Pass,
    Bound<string> Frame, Bound<Surface> ScanningSurface, Bound<Quantity> OffsetTolerance, Bound<Quantity> SkewTolerance,
    BoundList<ProbeUse> Probes, BoundList<BeamSetting> Beams, MapReader Acquisition)
{
    public string Path => Map.Path;

    /// <summary>What to call it in a sentence.</summary>
    public string Name => Id.Or(null) ?? "this setup";
}

public sealed record ProbeUse(
    MapReader Map, Bound<int> Station, Bound<string> Probe, Bound<string> Wedge, Bound<Side> Side, Bound<Quantity> IndexOffset);

public sealed record BeamSetting(
    MapReader Map, Bound<string> Id, Bound<ScanKind> Scan, Bound<int> From, Bound<int> Transmit, Bound<int> Receive, Bound<Wave> Wave,
    Bound<string> Reference)
{
    public string Name => Id.Or(null) ?? "this beam";
}

public sealed record ReferenceSetting(
    MapReader Map, Bound<string> Id, Bound<ReferenceMethod> Method, Bound<string> Block, BoundList<Bound<string>> Reflectors);

/// <summary>A place outside <c>references</c> that names a block.</summary>
public sealed record BlockUse(Bound<string> Block);

public sealed record Waiver(
    MapReader Map, Bound<string> Rule, Bound<string> At, Bound<string> Reason, Bound<string> ApprovedBy, Bound<DateOnly> Until);
