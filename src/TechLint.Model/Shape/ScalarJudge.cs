using System.Collections.Immutable;
using System.Globalization;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>What is wrong with a scalar: the rule's name and its arguments.</summary>
internal sealed record ScalarFault(string Code, ImmutableArray<string> Arguments);

/// <summary>Judges one scalar against the shape of its place.</summary>
internal static class ScalarJudge
{
    public static ScalarFault? Judge(ScalarNode scalar, ValueShape shape, ImmutableArray<PlausibleBand> bands)
    {
        // A plain scalar over several lines is most often a lost colon or comma, whatever it reads as.
        if (scalar is { Style: ScalarStyle.Plain, SpansLines: true } && shape is not TextShape) return Wrong(scalar, shape);
        var kind = CoreScalar.KindOf(scalar);
        return shape switch
        {
            TextShape => IsNoText(kind) || scalar.Value.Length == 0 ? Wrong(scalar, shape) : null,
            IdShape id => !IsNoText(kind) && id.Matches(scalar.Value)
                ? null : Wrong(scalar, shape, SuggestId(scalar.Value, id)),
            EnumShape choice => choice.Values.Contains(scalar.Value, StringComparer.Ordinal)
                ? null : Wrong(scalar, shape, NearestName.Of(scalar.Value, choice.Values)),
            IntegerShape integer => kind == CoreKind.Integer
                && int.TryParse(scalar.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
                && number >= integer.Minimum && number <= integer.Maximum ? null : Wrong(scalar, shape),
            BooleanShape => kind == CoreKind.Boolean ? null : Wrong(scalar, shape),
            DateShape => DateOnly.TryParseExact(scalar.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
                ? null : Wrong(scalar, shape),
            QuantityShape quantity => JudgeQuantity(scalar, kind, quantity, bands),
            _ => Wrong(scalar, shape),
        };
    }

    /// <summary>What another reader would take for something else than text or a number.</summary>
    private static bool IsNoText(CoreKind kind) => kind is CoreKind.Null or CoreKind.Boolean or CoreKind.NotFinite;

    /// <summary>What stands at a place, to stand behind "found".</summary>
    public static string Found(Node node) => node switch
    {
        ScalarNode { IsMissing: true } => "nothing",
        ScalarNode { Value: "" } => "an empty text",
        ScalarNode scalar => Shorten(scalar.Value),
        SequenceNode { Items.Length: 0 } => "an empty list",
        SequenceNode => "a list",
        MappingNode => "a group of keys",
        _ => "nothing",
    };

    private static ScalarFault? JudgeQuantity(ScalarNode scalar, CoreKind kind, QuantityShape shape, ImmutableArray<PlausibleBand> bands)
    {
        if (shape.AllowsNumber && kind is CoreKind.Integer or CoreKind.Number && IsDecimal(scalar.Value)) return null;
        var text = scalar.Value;
        var fault = QuantityParser.TryParse(text, out var quantity, out var unitStart);
        switch (fault)
        {
            case QuantityFault.None: break;
            case QuantityFault.NoUnit: return new ScalarFault("unit-missing", [Shorten(text), Symbols(shape)]);
            case QuantityFault.DecimalComma: return Wrong(scalar, shape, SuggestPoint(text, shape));
            case QuantityFault.UnknownUnit: return Wrong(scalar, shape, UnitSpelling.Suggest(text, unitStart, shape));
            default: return Wrong(scalar, shape);
        }

        if (shape.BoundsOf(quantity.Kind) is not { } bounds)
        {
            var wanted = string.Join(" or ", shape.Bounds.Select(allowed => Words(allowed.Kind)));
            return new ScalarFault("unit-wrong-kind", [Shorten(text), wanted, Words(quantity.Kind)]);
        }

        if (!bounds.Hold(quantity.Exact)) return Wrong(scalar, shape);
        foreach (var band in bands)
        {
            if (band.Kind == quantity.Kind && !band.Holds(quantity.Exact))
                return new ScalarFault("value-implausible", [Shorten(text), band.Expectation]);
        }

        return null;
    }

    private static ScalarFault Wrong(ScalarNode scalar, ValueShape shape, string? suggestion = null) =>
        new("wrong-value", [Found(scalar), shape.Expected, suggestion ?? ""]);

    private static string? SuggestId(string text, IdShape shape)
    {
        var candidate = text.Trim().Replace(' ', '-').Replace('_', '-');
        if (shape.Matches(candidate)) return candidate;
        candidate = candidate.ToLowerInvariant();
        return shape.Matches(candidate) ? candidate : null;
    }

    private static string? SuggestPoint(string text, QuantityShape shape)
    {
        var candidate = text.Replace(',', '.');
        return QuantityParser.Parse(candidate) is { } quantity && shape.BoundsOf(quantity.Kind) is not null ? candidate : null;
    }

    private static bool IsDecimal(string text) => text.Length <= 20
        && decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);

    private static string Symbols(QuantityShape shape) =>
        string.Join(", ", shape.Bounds.SelectMany(bounds => Units.Of(bounds.Kind)).Select(unit => unit.Symbol));

    private static string Words(QuantityKind kind) => kind switch
    {
        QuantityKind.Length => "a length",
        QuantityKind.Angle => "an angle",
        QuantityKind.Speed => "a speed",
        QuantityKind.Frequency => "a frequency",
        QuantityKind.Level => "a level",
        QuantityKind.Temperature => "a temperature",
        QuantityKind.TemperatureDifference => "a temperature difference",
        QuantityKind.Share => "a share",
        QuantityKind.Time => "a time",
        QuantityKind.Density => "a density",
        QuantityKind.EncoderResolution => "an encoder resolution",
        _ => "a data rate",
    };

    /// <summary>A message shows what was found on one short line, and never half a character.</summary>
    private static string Shorten(string text)
    {
        const int Most = 60;
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (line.Length <= Most) return line;
        return string.Concat(line.AsSpan(0, char.IsHighSurrogate(line[Most - 1]) ? Most - 1 : Most), "…");
    }
}
