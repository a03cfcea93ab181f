using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>How a beam scans.</summary>
public enum ScanKind { Sectorial, Linear, Fixed, Tofd, Tandem, TotalFocusing, CouplingMonitor, Lamination }

/// <summary>What a focal distance is measured along.</summary>
public enum FocusKind { None, Path, Depth, Across }

/// <summary>One beam of a setup: a sweep, a walk, a single law, a pair, an image or a monitor.</summary>
/// <param name="Id">The beam's id.</param>
/// <param name="Scan">How it scans.</param>
/// <param name="From">Station of the probe that transmits and receives; null for pairs.</param>
/// <param name="Transmit">Station that transmits, for pairs.</param>
/// <param name="Receive">Station that receives, for pairs.</param>
/// <param name="Wave">The wave in the part.</param>
/// <param name="Angles">In the part: the sweep, or one angle with From equal to To; null where the wedge decides (single elements).</param>
/// <param name="Aperture">Null for the whole probe.</param>
/// <param name="Focus">Where the laws focus.</param>
/// <param name="Legs">Legs it may see in, rising; empty means leg 1 alone.</param>
/// <param name="PathWindow">Recorded sound path in the part; null where none is stated.</param>
/// <param name="TimeWindow">Tofd: recorded time about the two reference signals.</param>
/// <param name="ZoneFrom">Tofd and tandem: upper end of the zone, from the scanning surface.</param>
/// <param name="ZoneTo">Tofd and tandem: lower end of the zone.</param>
/// <param name="Skew">Turn of the beam towards +x, beside the probe's.</param>
/// <param name="Averaging">Pulses averaged for one recorded line; null takes the acquisition's.</param>
/// <param name="Capture">Total focusing: the capture it is made from; equal names count once.</param>
public sealed record Beam(
    string Id, ScanKind Scan, int? From, int? Transmit, int? Receive, Wave Wave, AngleSweep? Angles, Aperture? Aperture, Focus Focus,
    EquatableArray<int> Legs, Band<Length>? PathWindow, TimeWindow? TimeWindow, Depth ZoneFrom, Depth ZoneTo, Angle Skew, int? Averaging,
    string? Capture)
{
    /// <summary>Total focusing: the way of sound that the image supposes; null for every other scan.</summary>
    public ImagingPath? ImagingPath { get; init; }

    /// <summary>Total focusing: what is imaged; null for every other scan.</summary>
    public ImageRegion? Region { get; init; }

    /// <summary>Total focusing: distance between the points of the image; null where none is stated.</summary>
    public Length? Grid { get; init; }

    /// <summary>Tofd: straight line between the index points as the author states it; null where left out. It follows from the offsets and must agree.</summary>
    public Length? StatedSeparation { get; init; }
}

/// <summary>Angles in the part; both ends included, and the last step shortened where the step does not divide the sweep.</summary>
public readonly record struct AngleSweep(Angle From, Angle To, Angle Step);

/// <summary>Elements count from 1. A walking aperture starts at <paramref name="First"/> and goes on by <paramref name="Step"/>
/// until its last element is <paramref name="Last"/>; a standing one has <paramref name="Last"/> = first + count − 1.</summary>
public readonly record struct Aperture(int First, int Count, int Last, int Step);

/// <summary>Path: sound path from each law's exit point. Depth: below the scanning surface. Across: y of a vertical line.</summary>
public readonly record struct Focus(FocusKind Kind, Length Distance);

/// <summary>What a diffraction beam records about its two reference signals.</summary>
public readonly record struct TimeWindow(Duration BeforeLateralWave, Duration AfterBackWall);
