using System.Collections.Frozen;
using TechLint.Model.Shape;

namespace TechLint.Engine.Navigating;

/// <summary>
/// Where names stand in the format: kind of file and path of keys (entries of lists add no step). A schema tells that an id stands at a
/// place, not whose it is; this does.
/// </summary>
internal static class NameTable
{
    private static readonly FrozenDictionary<string, (NameKind Kind, bool IsDefinition)> Places =
        new Dictionary<string, (NameKind, bool)>(StringComparer.Ordinal)
    {
        ["technique/technique"] = (NameKind.Technique, true),
        ["technique/requirements"] = (NameKind.RequirementSet, false),
        ["technique/equipment"] = (NameKind.LibraryPath, false),
        ["technique/component/material"] = (NameKind.Material, false),
        ["technique/component/material/left"] = (NameKind.Material, false),
        ["technique/component/material/right"] = (NameKind.Material, false),
        ["technique/setups/id"] = (NameKind.Setup, true),
        ["technique/setups/frame"] = (NameKind.Frame, false),
        ["technique/setups/probes/station"] = (NameKind.Station, true),
        ["technique/setups/probes/probe"] = (NameKind.Probe, false),
        ["technique/setups/probes/wedge"] = (NameKind.Wedge, false),
        ["technique/setups/beams/id"] = (NameKind.Beam, true),
        ["technique/setups/beams/from"] = (NameKind.Station, false),
        ["technique/setups/beams/transmit"] = (NameKind.Station, false),
        ["technique/setups/beams/receive"] = (NameKind.Station, false),
        ["technique/setups/beams/reference"] = (NameKind.Reference, false),
        ["technique/setups/acquisition/instrument"] = (NameKind.Instrument, false),
        ["technique/setups/acquisition/encoder"] = (NameKind.Encoder, false),
        ["technique/references/id"] = (NameKind.Reference, true),
        ["technique/references/block"] = (NameKind.Block, false),
        ["technique/references/reflectors"] = (NameKind.Reflector, false),
        ["technique/couplant"] = (NameKind.Couplant, false),
        ["technique/waivers/rule"] = (NameKind.Rule, false),
        ["equipment/equipment"] = (NameKind.Library, true),
        ["equipment/probes/id"] = (NameKind.Probe, true),
        ["equipment/wedges/id"] = (NameKind.Wedge, true),
        ["equipment/wedges/fits"] = (NameKind.Probe, false),
        ["equipment/wedges/material"] = (NameKind.Material, false),
        ["equipment/frames/id"] = (NameKind.Frame, true),
        ["equipment/frames/encoder"] = (NameKind.Encoder, false),
        ["equipment/instruments/id"] = (NameKind.Instrument, true),
        ["equipment/encoders/id"] = (NameKind.Encoder, true),
        ["equipment/couplants/id"] = (NameKind.Couplant, true),
        ["equipment/materials/id"] = (NameKind.Material, true),
        ["equipment/blocks/id"] = (NameKind.Block, true),
        ["equipment/blocks/material"] = (NameKind.Material, false),
        ["equipment/blocks/reflectors/id"] = (NameKind.Reflector, true),
        ["requirement/requirement-set"] = (NameKind.RequirementSet, true),
        ["requirement/from"] = (NameKind.RequirementSet, false),
        ["requirement/never-waivable"] = (NameKind.Rule, false),
        ["requirement/scope/materials"] = (NameKind.Material, false),
        ["settings/requirements"] = (NameKind.RequirementSet, false),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static string RootOf(FormatKind kind) => FormatShapes.NameOf(kind);

    /// <summary>What a scalar at a path of keys names; null where it is no name.</summary>
    public static (NameKind Kind, bool IsDefinition)? At(string keyPath) =>
        Places.TryGetValue(keyPath, out var found) ? found
        : keyPath.StartsWith("technique/checks/", StringComparison.Ordinal) && keyPath.EndsWith("/block", StringComparison.Ordinal) ? (NameKind.Block, false)
        : null;

    /// <summary>Groups whose keys are names of rules.</summary>
    public static bool KeysAreRules(string keyPath) => keyPath is "settings/rules" or "settings/paths/rules";
}
