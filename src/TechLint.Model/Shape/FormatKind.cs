namespace TechLint.Model.Shape;

/// <summary>The four kinds of file of the format.</summary>
public enum FormatKind { Technique, Equipment, Requirement, Settings }

public static class FormatKinds
{
    /// <summary>What a file is by its name, or null where its name says nothing.</summary>
    public static FormatKind? Of(string path)
    {
        var name = path.AsSpan(path.LastIndexOfAny(['/', '\\']) + 1);
        if (name.EndsWith(".technique.yaml", StringComparison.Ordinal)) return FormatKind.Technique;
        if (name.EndsWith(".equipment.yaml", StringComparison.Ordinal)) return FormatKind.Equipment;
        if (name.EndsWith(".requirements.yaml", StringComparison.Ordinal)) return FormatKind.Requirement;
        return name is "techlint.yaml" ? FormatKind.Settings : null;
    }
}
