using System.Collections.Frozen;
using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Requirements;

public enum LimitSense
{
    /// <summary>The smallest value is the tightest.</summary>
    AtMost,

    /// <summary>The greatest value is the tightest.</summary>
    AtLeast,
}

/// <summary>A limit that some rule or study reads.</summary>
/// <param name="Meaning">One sentence for the reader of a set.</param>
public sealed record LimitName(string Name, LimitSense Sense, ImmutableArray<QuantityKind> Kinds, string Meaning);

/// <summary>Every limit that a requirement set may state. A set that names another one has a finding.</summary>
public static class LimitNames
{
    public static readonly LimitName VolumeCovered = new(
        "volume-covered", LimitSense.AtLeast, [QuantityKind.Share], "Share of the examined volume that the beams of all passes see together.");

    public static readonly LimitName CapClearance = new(
        "cap-clearance", LimitSense.AtLeast, [QuantityKind.Length], "Distance from the toe of the reinforcement to the front edge of a wedge.");

    public static readonly LimitName CorrectionExtrapolation = new(
        "correction-extrapolation", LimitSense.AtMost, [QuantityKind.Share],
        "How far sound paths used in the examined volume may lie outside those of the reference reflectors, as a share of the reference path.");

    public static readonly LimitName TofdDrop = new(
        "tofd-drop", LimitSense.AtLeast, [QuantityKind.Level],
        "How far the product of transmit and receive of a diffraction pair may fall below its greatest value where it still counts as seeing.");

    public static readonly LimitName FusionFaceIncidence = new(
        "fusion-face-incidence", LimitSense.AtMost, [QuantityKind.Angle],
        "How far a ray may lie from a fusion face's normal where it still counts as meeting the face squarely.");

    public static readonly LimitName ImageDrop = new(
        "image-drop", LimitSense.AtLeast, [QuantityKind.Level],
        "How far the predicted sensitivity of a total-focusing image may fall below its best one where a point still counts as seen.");

    public static readonly LimitName SensitivityDrop = new(
        "sensitivity-drop", LimitSense.AtLeast, [QuantityKind.Level],
        "How far the simulated echo of a sound beam may lie below the loudest axis at equal sound path where the place still counts as seen.");

    public static readonly LimitName TemperatureDifference = new(
        "temperature-difference", LimitSense.AtMost, [QuantityKind.TemperatureDifference],
        "How far the temperatures of the block that a reference is set on and of the part may differ.");

    public static readonly ImmutableArray<LimitName> All =
        [VolumeCovered, CapClearance, CorrectionExtrapolation, TofdDrop, FusionFaceIncidence, ImageDrop, SensitivityDrop, TemperatureDifference];

    /// <summary>Limits that the format speaks of and that no rule reads yet: stating one is no slip, and whoever does is told that it is not judged.</summary>
    public static readonly ImmutableArray<string> ComeLater = ["increment"];

    private static readonly FrozenDictionary<string, LimitName> ByName = All.ToFrozenDictionary(limit => limit.Name, StringComparer.Ordinal);

    public static LimitName? Find(string name) => ByName.GetValueOrDefault(name);
}
