using System.Collections.Immutable;
using System.Text.Json;

namespace TechLint.Model.Shape;

/// <summary>
/// Reads our own schemas, and only what they use of JSON Schema 2020-12: a form outside that is a programming error, caught by the test
/// that reads all four.
/// </summary>
internal sealed class SchemaReader
{
    private readonly JsonElement definitions;
    private readonly Dictionary<string, ValueShape> scalars = new(StringComparer.Ordinal);

    private SchemaReader(JsonElement root) => definitions = root.GetProperty("$defs");

    public static ObjectShape Read(JsonElement root, string name) => (ObjectShape)new SchemaReader(root).ReadValue(root, name);

    private ValueShape ReadValue(JsonElement schema, string path)
    {
        if (schema.TryGetProperty("$ref", out var reference)) return ReadReference(reference.GetString()!["#/$defs/".Length..], path);
        var title = Text(schema, "title") ?? "";
        if (schema.TryGetProperty("type", out var type))
        {
            return type.GetString() switch
            {
                "object" when schema.TryGetProperty("properties", out var properties) => ReadObject(schema, properties, title, path),
                "object" => new MapShape(title, ReadValue(schema.GetProperty("additionalProperties"), path)),
                "array" => new ListShape(title, ReadValue(schema.GetProperty("items"), path), Number(schema, "minItems") ?? 0),
                "string" => new EnumShape(title, Strings(schema.GetProperty("enum"))),
                "integer" when schema.TryGetProperty("enum", out var only) => new IntegerShape(title, only[0].GetInt32(), only[0].GetInt32()),
                "integer" => new IntegerShape(title, Number(schema, "minimum") ?? int.MinValue, Number(schema, "maximum") ?? int.MaxValue),
                "boolean" => new BooleanShape(title),
                _ => throw Unknown(path),
            };
        }

        var alternatives = ImmutableArray.CreateBuilder<ValueShape>();
        foreach (var alternative in schema.GetProperty("anyOf").EnumerateArray()) alternatives.Add(ReadValue(alternative, path));
        return new AnyOfShape(title, alternatives.ToImmutable());
    }

    /// <summary>Definitions of scalars are shared; those that hold keys are read again at each place, since what is plausible differs.</summary>
    private ValueShape ReadReference(string name, string path)
    {
        if (scalars.TryGetValue(name, out var known)) return known;
        var schema = definitions.GetProperty(name);
        var title = Text(schema, "title") ?? "";
        ValueShape? scalar = name switch
        {
            "text" => new TextShape(title),
            "date" => new DateShape(title),
            _ when ScalarDefinitions.Quantities.TryGetValue(name, out var bounds) =>
                new QuantityShape(title, name, Expected(schema), bounds, name is ScalarDefinitions.AnyQuantity),
            _ when ScalarDefinitions.Words.TryGetValue(name, out var matches) => new IdShape(title, name, Expected(schema), matches),
            _ => null,
        };
        if (scalar is null) return ReadValue(schema, path);
        scalars.Add(name, scalar);
        return scalar;
    }

    private ObjectShape ReadObject(JsonElement schema, JsonElement properties, string title, string path)
    {
        var required = schema.TryGetProperty("required", out var names) ? Strings(names) : [];
        var keys = ImmutableArray.CreateBuilder<KeyShape>();
        foreach (var property in properties.EnumerateObject())
        {
            var below = $"{path}/{property.Name}";
            keys.Add(new KeyShape(property.Name, Text(property.Value, "title") ?? "", Text(property.Value, "description") ?? "",
                required.Contains(property.Name, StringComparer.Ordinal),
                property.Value.TryGetProperty("default", out var value) ? value.ToString() : null,
                Examples(property.Value), ReadValue(property.Value, below), Plausibility.At(below)));
        }

        return new ObjectShape(title, keys.ToImmutable(), Number(schema, "minProperties") ?? 0, Number(schema, "maxProperties") ?? int.MaxValue,
            ReadConditions(schema));
    }

    private static ImmutableArray<Condition> ReadConditions(JsonElement schema)
    {
        var conditions = ImmutableArray.CreateBuilder<Condition>();
        if (schema.TryGetProperty("dependentRequired", out var dependent))
        {
            foreach (var property in dependent.EnumerateObject())
                conditions.Add(new Condition([property.Name], [], Demand.None with { Required = Strings(property.Value) }, Demand.None));
        }

        if (!schema.TryGetProperty("allOf", out var all)) return conditions.ToImmutable();
        foreach (var part in all.EnumerateArray())
        {
            if (!part.TryGetProperty("if", out var given))
            {
                conditions.Add(new Condition([], [], ReadDemand(part), Demand.None));
                continue;
            }

            var path = ImmutableArray.CreateBuilder<string>();
            while (given.TryGetProperty("properties", out var properties))
            {
                var property = properties.EnumerateObject().Single();
                path.Add(property.Name);
                given = property.Value;
            }

            var values = given.TryGetProperty("const", out var value) ? [value.GetString()!] : Strings(given.GetProperty("enum"));
            conditions.Add(new Condition(path.ToImmutable(), values,
                part.TryGetProperty("then", out var then) ? ReadDemand(then) : Demand.None,
                part.TryGetProperty("else", out var otherwise) ? ReadDemand(otherwise) : Demand.None));
        }

        return conditions.ToImmutable();
    }

    private static Demand ReadDemand(JsonElement schema)
    {
        var forbidden = ImmutableArray.CreateBuilder<string>();
        var below = ImmutableArray.CreateBuilder<KeyValuePair<string, Demand>>();
        if (schema.TryGetProperty("properties", out var properties))
        {
            foreach (var property in properties.EnumerateObject())
            {
                if (property.Value.ValueKind == JsonValueKind.False) forbidden.Add(property.Name);
                else if (property.Value.ValueKind == JsonValueKind.Object) below.Add(new(property.Name, ReadDemand(property.Value)));
            }
        }

        ImmutableArray<ImmutableArray<string>> oneOf = schema.TryGetProperty("anyOf", out var any)
            ? [any.EnumerateArray().Select(alternative => alternative.GetProperty("required")[0].GetString()!).ToImmutableArray()]
            : [];
        return new Demand(schema.TryGetProperty("required", out var required) ? Strings(required) : [], oneOf, forbidden.ToImmutable(),
            below.ToImmutable(), schema.TryGetProperty("items", out var items) ? ReadDemand(items) : null);
    }

    /// <summary>What belongs here, from the definition's own words and first example.</summary>
    private static string Expected(JsonElement schema)
    {
        var description = Text(schema, "description")!.TrimEnd('.');
        var words = char.ToLowerInvariant(description[0]) + description[1..];
        var examples = Examples(schema);
        return examples.IsEmpty ? words : $"{words}, such as {examples[0]}";
    }

    private static ImmutableArray<string> Examples(JsonElement schema) => schema.TryGetProperty("examples", out var examples) ? Strings(examples) : [];

    private static ImmutableArray<string> Strings(JsonElement list) => [.. list.EnumerateArray().Select(item => item.GetString()!)];

    private static string? Text(JsonElement schema, string name) => schema.TryGetProperty(name, out var value) ? value.GetString() : null;

    private static int? Number(JsonElement schema, string name) => schema.TryGetProperty(name, out var value) ? value.GetInt32() : null;

    private static InvalidOperationException Unknown(string path) => new($"The schema has a form that its reader does not know, at {path}.");
}
