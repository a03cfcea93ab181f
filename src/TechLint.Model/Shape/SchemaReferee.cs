using System.Collections.Immutable;
using System.Text.Json;
using Json.Schema;
using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>A fault that the JSON Schema library sees.</summary>
/// <param name="At">JSON Pointer of the value.</param>
/// <param name="Keyword">The keyword of JSON Schema that fails.</param>
public sealed record SchemaFault(string At, string Keyword);

/// <summary>
/// Holds a tree against the schema itself, by a library that knows nothing of shapes. It is the second opinion of
/// <c>check --verify-schema</c>: what it refuses, <see cref="ShapeChecker"/> must refuse, and what the checker refuses beyond it
/// (days that no calendar has, reversed ranges, ids given twice, bores without room, implausible values) no schema can say.
/// </summary>
public static class SchemaReferee
{
    private static readonly Lazy<JsonSchema>[] Schemas = [.. Enum.GetValues<FormatKind>().Select(kind => new Lazy<JsonSchema>(() => Load(kind)))];

    public static bool IsValid(SyntaxTree tree, FormatKind kind) => Evaluate(tree, kind, OutputFormat.Flag).IsValid;

    /// <summary>The faults, outermost first; of a choice between forms only the choice itself.</summary>
    public static ImmutableArray<SchemaFault> Faults(SyntaxTree tree, FormatKind kind)
    {
        var faults = ImmutableArray.CreateBuilder<SchemaFault>();
        Collect(Evaluate(tree, kind, OutputFormat.Hierarchical), faults);
        return faults.ToImmutable();
    }

    private static EvaluationResults Evaluate(SyntaxTree tree, FormatKind kind, OutputFormat format)
    {
        var instance = JsonSerializer.SerializeToElement(JsonTree.Of(tree.Root), JsonTreeContext.Default.JsonNode);
        return Schemas[(int)kind].Value.Evaluate(instance, new EvaluationOptions { OutputFormat = format });
    }

    private static void Collect(EvaluationResults result, ImmutableArray<SchemaFault>.Builder faults)
    {
        if (result.IsValid || result.EvaluationPath.ToString().EndsWith("/if", StringComparison.Ordinal)) return;
        var chooses = false;
        foreach (var keyword in result.Errors?.Keys.Order(StringComparer.Ordinal) ?? Enumerable.Empty<string>())
        {
            chooses |= keyword is "anyOf";
            faults.Add(new SchemaFault(result.InstanceLocation.ToString(), keyword));
        }

        if (chooses) return;
        foreach (var detail in result.Details ?? []) Collect(detail, faults);
    }

    private static JsonSchema Load(FormatKind kind)
    {
        using var stream = FormatShapes.OpenSchema(kind);
        using var reader = new StreamReader(stream);
        return JsonSchema.FromText(reader.ReadToEnd());
    }
}
