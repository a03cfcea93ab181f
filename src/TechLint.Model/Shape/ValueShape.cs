using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>What may stand at one place of a file. Read from the schemas, see <see cref="FormatShapes"/>.</summary>
/// <param name="title">The schema's title of the value itself; a key has its own.</param>
public abstract class ValueShape(string title)
{
    public string Title { get; } = title;

    /// <summary>What belongs here, to stand behind "here belongs": <c>a length in mm …, such as 19.05 mm</c>.</summary>
    public abstract string Expected { get; }
}

/// <summary>A group of keys.</summary>
public sealed class ObjectShape(string title, ImmutableArray<KeyShape> keys, int minimumKeys, int maximumKeys,
    ImmutableArray<Condition> conditions) : ValueShape(title)
{
    /// <summary>In the canonical order of the format.</summary>
    public ImmutableArray<KeyShape> Keys { get; } = keys;

    public int MinimumKeys { get; } = minimumKeys;

    public int MaximumKeys { get; } = maximumKeys;

    /// <summary>What the value of one key asks of others, such as the keys that each kind of scan needs.</summary>
    public ImmutableArray<Condition> Conditions { get; } = conditions;

    /// <summary>True where <c>from</c> and <c>to</c> are the ends of a range.</summary>
    public bool IsRange { get; } = keys.Any(key => key is { Name: "from", Value: QuantityShape })
        && keys.Any(key => key is { Name: "to", Value: QuantityShape });

    public override string Expected =>
        Keys.Length == 0 ? "a group of keys" : $"a group of keys such as {string.Join(", ", Keys.Take(3).Select(key => key.Name))}";

    public KeyShape? Find(string name)
    {
        foreach (var key in Keys)
        {
            if (string.Equals(key.Name, name, StringComparison.Ordinal)) return key;
        }

        return null;
    }
}

/// <summary>A list. Entries that carry an <c>id</c> (probes and stations: a <c>station</c>) are told apart by it.</summary>
public sealed class ListShape(string title, ValueShape item, int minimumCount) : ValueShape(title)
{
    public ValueShape Item { get; } = item;

    public int MinimumCount { get; } = minimumCount;

    /// <summary>The key by which a model path names an entry, or null where entries are only counted.</summary>
    public string? IdentityKey { get; } = item is not ObjectShape entry ? null
        : entry.Find("id") is not null ? "id"
        : entry.Find("station") is not null ? "station" : null;

    public override string Expected => MinimumCount > 0 ? "a list of at least one entry" : "a list";
}

/// <summary>Names that the author chooses, each with a value of the same shape.</summary>
public sealed class MapShape(string title, ValueShape value) : ValueShape(title)
{
    public ValueShape Value { get; } = value;

    public override string Expected => "a group of names with their values";

    /// <summary>Names of rules and limits: small letters, digits and hyphens, a letter first.</summary>
    public static bool IsName(string text) =>
        text.Length > 0 && char.IsAsciiLetterLower(text[0]) && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');
}

public sealed class EnumShape(string title, ImmutableArray<string> values) : ValueShape(title)
{
    public ImmutableArray<string> Values { get; } = values;

    public override string Expected => Values.Length == 1 ? Values[0] : $"one of {string.Join(", ", Values)}";
}

/// <summary>A number with its unit.</summary>
public sealed class QuantityShape(string title, string name, string expected, ImmutableArray<QuantityBounds> bounds, bool allowsNumber)
    : ValueShape(title)
{
    /// <summary>The name of the definition in the schema's <c>$defs</c>.</summary>
    public string Name { get; } = name;

    /// <summary>The kinds that may stand here, the preferred one in front, each with its bounds.</summary>
    public ImmutableArray<QuantityBounds> Bounds { get; } = bounds;

    /// <summary>True where a count without a unit may stand too: in the limits of a requirement set.</summary>
    public bool AllowsNumber { get; } = allowsNumber;

    public override string Expected { get; } = expected;

    public QuantityBounds? BoundsOf(QuantityKind kind)
    {
        foreach (var candidate in Bounds)
        {
            if (candidate.Kind == kind) return candidate;
        }

        return null;
    }
}

/// <summary>Any text but an empty one.</summary>
public sealed class TextShape(string title) : ValueShape(title)
{
    public override string Expected => "text";
}

/// <summary>Text of a fixed form: an id, the number of a technique, an imaging path.</summary>
public sealed class IdShape(string title, string name, string expected, Func<string, bool> matches) : ValueShape(title)
{
    /// <summary>The name of the definition in the schema's <c>$defs</c>.</summary>
    public string Name { get; } = name;

    public Func<string, bool> Matches { get; } = matches;

    public override string Expected { get; } = expected;
}

public sealed class IntegerShape(string title, int minimum, int maximum) : ValueShape(title)
{
    public int Minimum { get; } = minimum;

    public int Maximum { get; } = maximum;

    public override string Expected =>
        Minimum == Maximum ? FormattableString.Invariant($"{Minimum}")
        : Maximum == int.MaxValue ? FormattableString.Invariant($"a whole number from {Minimum}")
        : FormattableString.Invariant($"a whole number from {Minimum} to {Maximum}");
}

public sealed class BooleanShape(string title) : ValueShape(title)
{
    public override string Expected => "true or false";
}

public sealed class DateShape(string title) : ValueShape(title)
{
    public override string Expected => "a day of the calendar, such as 2026-10-05";
}

/// <summary>One of several shapes; which one is told by what stands there.</summary>
public sealed class AnyOfShape(string title, ImmutableArray<ValueShape> alternatives) : ValueShape(title)
{
    public ImmutableArray<ValueShape> Alternatives { get; } = alternatives;

    public override string Expected => string.Join(", or ", Alternatives.Select(alternative => alternative.Expected));
}
