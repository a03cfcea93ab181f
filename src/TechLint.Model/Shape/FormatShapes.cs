using System.Text.Json;

namespace TechLint.Model.Shape;

/// <summary>
/// The shapes of the four kinds of file, each read from its embedded schema when it is first asked for. Binder, checker, hover, completion and
/// formatter all read these, so that the schema speaks once.
/// </summary>
public static class FormatShapes
{
    private static readonly Lazy<ObjectShape>[] Shapes = [.. Enum.GetValues<FormatKind>().Select(kind => new Lazy<ObjectShape>(() => Read(kind)))];

    public static ObjectShape Of(FormatKind kind) => Shapes[(int)kind].Value;

    /// <summary>The name by which paths into a schema start: <c>technique</c>, <c>equipment</c>, <c>requirement</c>, <c>settings</c>.</summary>
    public static string NameOf(FormatKind kind) => kind switch
    {
        FormatKind.Technique => "technique",
        FormatKind.Equipment => "equipment",
        FormatKind.Requirement => "requirement",
        _ => "settings",
    };

    /// <summary>The schema's own text, in UTF-8.</summary>
    public static Stream OpenSchema(FormatKind kind) =>
        typeof(FormatShapes).Assembly.GetManifestResourceStream($"schemas/{NameOf(kind)}.schema.json")
        ?? throw new InvalidOperationException("A schema is not embedded.");

    private static ObjectShape Read(FormatKind kind)
    {
        using var stream = OpenSchema(kind);
        using var document = JsonDocument.Parse(stream);
        return SchemaReader.Read(document.RootElement, NameOf(kind));
    }
}
