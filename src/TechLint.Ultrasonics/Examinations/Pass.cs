using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>One run of the frame along the weld.</summary>
/// <param name="Id">The setup's id.</param>
/// <param name="Number">Its pass number, where several setups make one examination.</param>
/// <param name="ScanningSurface">The surface that the probes ride on. Scanning from inside, left and z are the setup's own.</param>
/// <param name="Tolerance">How well the frame holds its place.</param>
/// <param name="Probes">In order of station.</param>
/// <param name="Beams">In the author's order.</param>
/// <param name="Acquisition">Null where nothing is recorded or stated.</param>
public sealed record Pass(
    string Id, int? Number, Surface ScanningSurface, PositioningTolerance Tolerance, EquatableArray<MountedProbe> Probes,
    EquatableArray<Beam> Beams, Acquisition? Acquisition);

/// <summary>How far a probe may stand from its stated place, either way.</summary>
public sealed record PositioningTolerance(Length IndexOffset, Angle Skew)
{
    public static readonly PositioningTolerance None = new(default, default);
}

/// <summary>A probe on its wedge at its station.</summary>
/// <param name="Station">Where it sits on the frame.</param>
/// <param name="Side">The side of the weld it stands on.</param>
/// <param name="IndexOffset">Weld centreline to the middle of the wedge's front edge, along the scanning surface.</param>
/// <param name="Along">Place of the station along the weld.</param>
/// <param name="Skew">Turn of the probe towards +x.</param>
/// <param name="Transducer">The probe.</param>
/// <param name="Wedge">The wedge under it.</param>
public sealed record MountedProbe(
    int Station, Side Side, Length IndexOffset, Length Along, Angle Skew, Transducer Transducer, Wedge Wedge);

/// <summary>Kinds of probe.</summary>
public enum TransducerKind { PhasedArray, SingleElement, DualPhasedArray, DualElement }

/// <summary>What of a probe the physics needs.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Frequency">Nominal frequency.</param>
/// <param name="Bandwidth">Of the nominal frequency, at -6 dB; null where unknown.</param>
/// <param name="PulseLength">At -20 dB; null where unknown (see <c>Pulse.LengthOf</c>).</param>
/// <param name="Elements">1 for a single element.</param>
/// <param name="Pitch">Centre to centre of elements, along the array.</param>
/// <param name="Gap">Between elements.</param>
/// <param name="Elevation">Size across the plane of incidence: an array's passive side, a rectangle's width, or a round element's diameter.</param>
/// <param name="ElementSize">Single element: size in the plane of incidence, or diameter. Array: pitch − gap.</param>
/// <param name="IsRound">A round single element.</param>
public sealed record Transducer(
    TransducerKind Kind, Frequency Frequency, Share? Bandwidth, Duration? PulseLength, int Elements, Length Pitch, Length Gap,
    Length Elevation, Length ElementSize, bool IsRound)
{
    /// <summary>Dual probes: from the middle of one half to the middle of the other, across the plane of incidence. Elements are counted a half.</summary>
    public Length? Separation { get; init; }

    /// <summary>One half sends and the other receives.</summary>
    public bool IsDual => Kind is TransducerKind.DualPhasedArray or TransducerKind.DualElement;
}

/// <summary>Which way a sole is cut.</summary>
public enum ContourDirection { AlongBeam, AcrossBeam }

/// <summary>What of a wedge the physics needs.</summary>
/// <param name="Longitudinal">Longitudinal speed of sound in the wedge; null where unknown.</param>
/// <param name="ArraySlope">Slope of the array, for wedges of arrays.</param>
/// <param name="FirstElement">Centre of element 1, for wedges of arrays.</param>
/// <param name="ElementOneAtFront">Elements count from the front.</param>
/// <param name="RefractedAngle">For wedges of single elements: the angle in the part they are made for.</param>
/// <param name="RefractedWave">For wedges of single elements.</param>
/// <param name="IndexPointBehindFront">For wedges of single elements.</param>
/// <param name="Path">For wedges of single elements: sound path in the wedge.</param>
/// <param name="Length">Along the beam.</param>
/// <param name="Width">Across it.</param>
/// <param name="ContourDiameter">The diameter the sole is cut for; null for a flat sole.</param>
/// <param name="ContourDirection">Which way it is cut.</param>
/// <param name="Material">The wedge material's name, for messages.</param>
public sealed record Wedge(
    string Material, Speed? Longitudinal, Angle? ArraySlope, ElementPlace? FirstElement, bool ElementOneAtFront, Angle? RefractedAngle,
    Wave RefractedWave, Length? IndexPointBehindFront, Length? Path, Length Length, Length Width, Length? ContourDiameter,
    ContourDirection ContourDirection)
{
    /// <summary>Wedges of dual probes: by how much each half leans towards the other, about the array's own axis; null for wedges of single probes.</summary>
    public Angle? RoofAngle { get; init; }
}

/// <summary>A place in the wedge: height above the contact plane, distance behind the front face.</summary>
public readonly record struct ElementPlace(Length Height, Length BehindFront);
