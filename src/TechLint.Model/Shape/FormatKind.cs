namespace TechLint.Model.Shape;

/// <summary>The four kinds of file of the format.</summary>
public enum FormatKind { Technique, Equipment, Requirement, Settings }

public static class FormatKinds
{
    public const string TechniqueEnding = ".technique.yaml";
    public const string EquipmentEnding = ".equipment.yaml";
    public const string RequirementsEnding = ".requirements.yaml";
    public const string SettingsName = "techlint.yaml";

    /// <summary>What a file is by its name, or null where its name says nothing.</summary>
    public static FormatKind? Of(string path)
    {
        var name = path.AsSpan(path.LastIndexOfAny(['/', '\\']) + 1);
        if (name.EndsWith(TechniqueEnding, StringComparison.Ordinal)) return FormatKind.Technique;
        if (name.EndsWith(EquipmentEnding, StringComparison.Ordinal)) return FormatKind.Equipment;
        if (name.EndsWith(RequirementsEnding, StringComparison.Ordinal)) return FormatKind.Requirement;
        return name is SettingsName ? FormatKind.Settings : null;
    }
}
