using System.Collections.Frozen;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Model.Techniques;

public enum TechniqueStatus { Draft, Submitted, Approved, Withdrawn }

public enum ComponentForm { Plate, Pipe, Vessel, Tank, Cone }

public enum Joint { Butt, Tee, Nozzle, Corner, Lap }

public enum WeldOrientation { Longitudinal, Circumferential, Helical }

public enum ExaminedSides { Both, Left, Right }

public enum ReferenceMethod { TimeCorrectedGain, DistanceAmplitudeCurve, DistanceGainSize, LateralWave, BackWall, Notch }

public enum ReflectorKind { SideDrilledHole, FlatBottomHole, Notch, Other }

/// <summary>The format's words and what they mean here. The schemas list the same words; a test holds the two together.</summary>
public static class Words
{
    public static readonly FrozenDictionary<string, TechniqueStatus> Statuses = Of<TechniqueStatus>();
    public static readonly FrozenDictionary<string, ComponentForm> Forms = Of<ComponentForm>();
    public static readonly FrozenDictionary<string, Joint> Joints = Of<Joint>();
    public static readonly FrozenDictionary<string, WeldOrientation> Orientations = Of<WeldOrientation>();
    public static readonly FrozenDictionary<string, ExaminedSides> ExaminedSides = Of<ExaminedSides>();
    public static readonly FrozenDictionary<string, ReferenceMethod> ReferenceMethods = Of<ReferenceMethod>();
    public static readonly FrozenDictionary<string, ReflectorKind> ReflectorKinds = Of<ReflectorKind>();
    public static readonly FrozenDictionary<string, Surface> Surfaces = Of<Surface>();
    public static readonly FrozenDictionary<string, Side> Sides = Of<Side>();
    public static readonly FrozenDictionary<string, Wave> Waves = Of<Wave>();
    public static readonly FrozenDictionary<string, ScanKind> Scans = Of<ScanKind>();
    public static readonly FrozenDictionary<string, PreparationShape> Preparations = Of<PreparationShape>();
    public static readonly FrozenDictionary<string, TransducerKind> Transducers = Of<TransducerKind>();
    public static readonly FrozenDictionary<string, ContourDirection> ContourDirections = Of<ContourDirection>();

    /// <summary><c>SingleV</c> is <c>single-v</c>, <c>TimeCorrectedGain</c> is <c>time-corrected-gain</c>.</summary>
    public static string Spell<T>(T value) where T : struct, Enum
    {
        var name = Enum.GetName(value) ?? "";
        var spelled = new System.Text.StringBuilder(name.Length + 4);
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterUpper(letter) && spelled.Length > 0) spelled.Append('-');
            spelled.Append(char.ToLowerInvariant(letter));
        }

        return spelled.ToString();
    }

    private static FrozenDictionary<string, T> Of<T>() where T : struct, Enum =>
        Enum.GetValues<T>().ToFrozenDictionary(Spell, StringComparer.Ordinal);
}
