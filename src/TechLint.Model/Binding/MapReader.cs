using System.Collections.Immutable;
using System.Globalization;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Binding;

/// <summary>
/// Reads typed values out of one mapping. It reports nothing: the shape checker has said what is wrong, and whatever it found broken is read
/// as <see cref="Presence.Broken"/>. Without a check (built-in sets) nothing is.
/// </summary>
public sealed class MapReader
{
    private readonly MappingNode? map;
    private readonly ShapeCheck? check;

    private MapReader(MappingNode? map, Presence presence, TextSpan span, string path, ShapeCheck? check)
    {
        this.map = map;
        this.check = check;
        Presence = presence;
        Span = span;
        Path = path;
    }

    public Presence Presence { get; }

    public bool IsKnown => Presence == Presence.Known;

    /// <summary>Where a finding about the whole mapping goes: its key where it has one.</summary>
    public TextSpan Span { get; }

    public string Path { get; }

    public static MapReader Of(SyntaxTree tree, ShapeCheck? check)
    {
        var root = tree.Root?.Resolve();
        var first = root is MappingNode { Entries.Length: > 0 } mapping ? mapping.Entries[0].Key.Span : new TextSpan(0, 0);
        return root is MappingNode top
            ? new(top, Presence.Known, first, "", check)
            : new(null, root is null ? Presence.Missing : Presence.Broken, first, "", check);
    }

    /// <summary>The span of a key as written, or this mapping's where it is left out.</summary>
    public TextSpan SpanOfKey(string key) => map?.Find(key)?.Key.Span ?? Span;

    public bool Has(string key) => map?.Find(key) is { Value: var value } && value.Resolve() is not ScalarNode { IsMissing: true };

    public Bound<string> Text(string key) => Read(key, static scalar => (true, scalar.Value));

    public Bound<int> Integer(string key) => Read(key, static scalar =>
        (int.TryParse(scalar.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value), value));

    public Bound<DateOnly> Date(string key) => Read(key, static scalar =>
        (DateOnly.TryParseExact(scalar.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var value), value));

    public Bound<Quantity> Quantity(string key) => Read(key, static scalar => (TryQuantity(scalar, out var value), value));

    /// <summary>An enumerated word; the names are the format's own, in kebab-case.</summary>
    public Bound<T> Word<T>(string key, IReadOnlyDictionary<string, T> words) =>
        Read(key, scalar => (words.TryGetValue(scalar.Value, out var value), value!));

    /// <summary><c>{from, to}</c> or a single quantity, which is both ends at once.</summary>
    public Bound<QuantityBand> Band(string key)
    {
        var path = ModelPath.Join(Path, key);
        if (Find(key, path, out var missing) is not { } value) return Cast<QuantityBand>(missing);
        switch (value)
        {
            case ScalarNode scalar when TryQuantity(scalar, out var single):
                return new(Presence.Known, new QuantityBand(single, single), scalar.ContentSpan, path);
            case MappingNode ends:
                var reader = new MapReader(ends, Presence.Known, ends.Span, path, check);
                var from = reader.Quantity("from");
                var to = reader.Quantity("to");
                if (from.IsBroken || to.IsBroken || (from.IsMissing && to.IsMissing)) break;
                return new(Presence.Known, new QuantityBand(from.IsKnown ? from.Value : null, to.IsKnown ? to.Value : null), ends.Span, path);
        }

        return new(Presence.Broken, default, value.Span, path);
    }

    public MapReader Map(string key)
    {
        var path = ModelPath.Join(Path, key);
        if (map is null) return new(null, Presence, Span, path, check);
        if (map.Find(key) is not { } entry) return new(null, AbsenceOf(key), Span, path, check);
        var value = entry.Value.Resolve();
        if (value is ScalarNode { IsMissing: true } && !IsBroken(entry.Value)) return new(null, Presence.Missing, entry.Key.Span, path, check);
        return value is MappingNode child && !IsBroken(entry.Value)
            ? new(child, Presence.Known, entry.Key.Span, path, check)
            : new(null, Presence.Broken, entry.Key.Span, path, check);
    }

    /// <summary>A list of mappings, each with its place. Entries that are no mappings are left out; the list is then marked broken.</summary>
    public BoundList<MapReader> Maps(string key, string identifiedBy = "id")
    {
        var path = ModelPath.Join(Path, key);
        if (Find(key, path, out var missing) is not { } value) return new(missing.Presence, [], missing.Span, path);
        if (value is not SequenceNode sequence) return new(Presence.Broken, [], value.Span, path);
        var presence = Presence.Known;
        var items = ImmutableArray.CreateBuilder<MapReader>(sequence.Items.Length);
        for (var i = 0; i < sequence.Items.Length; i++)
        {
            var item = sequence.Items[i].Resolve();
            if (item is MappingNode child && !IsBroken(sequence.Items[i]))
            {
                var id = child.Find(identifiedBy)?.Value.Resolve() is ScalarNode { IsMissing: false } scalar ? scalar.Value : null;
                var place = child.Entries.Length > 0 ? child.Entries[0].Key.Span : child.Span;
                items.Add(new MapReader(child, Presence.Known, place, ModelPath.Item(path, id, i), check));
            }
            else
            {
                presence = Presence.Broken;
            }
        }

        return new(presence, items.ToImmutable(), map!.Find(key)!.Key.Span, path);
    }

    /// <summary>A list of scalars, or one scalar that stands for a list of one.</summary>
    public BoundList<Bound<string>> Texts(string key)
    {
        var path = ModelPath.Join(Path, key);
        if (Find(key, path, out var missing) is not { } value) return new(missing.Presence, [], missing.Span, path);
        var span = map!.Find(key)!.Key.Span;
        if (value is ScalarNode one) return new(Presence.Known, [new(Presence.Known, one.Value, one.ContentSpan, path)], span, path);
        if (value is not SequenceNode sequence) return new(Presence.Broken, [], value.Span, path);
        var presence = Presence.Known;
        var items = ImmutableArray.CreateBuilder<Bound<string>>(sequence.Items.Length);
        for (var i = 0; i < sequence.Items.Length; i++)
        {
            if (sequence.Items[i].Resolve() is ScalarNode { IsMissing: false } scalar && !IsBroken(sequence.Items[i]))
            {
                items.Add(new(Presence.Known, scalar.Value, scalar.ContentSpan, ModelPath.Item(path, null, i)));
            }
            else
            {
                presence = Presence.Broken;
            }
        }

        return new(presence, items.ToImmutable(), span, path);
    }

    /// <summary>The keys of this mapping with their readers, in the author's order.</summary>
    public IEnumerable<(string Key, TextSpan KeySpan)> Keys => map is null ? [] : map.EffectiveEntries().Select(entry => (entry.Key.Value, entry.Key.Span));

    private static bool TryQuantity(ScalarNode scalar, out Quantity quantity) =>
        QuantityParser.TryParse(scalar.Value, out quantity, out _) == QuantityFault.None;

    private static Bound<T> Cast<T>(Bound<ScalarNode> from) => new(from.Presence, default, from.Span, from.Path);

    private Node? Find(string key, string path, out Bound<ScalarNode> otherwise)
    {
        if (map?.Find(key) is not { } entry)
        {
            otherwise = new(map is null ? Presence : AbsenceOf(key), null, Span, path);
            return null;
        }

        var value = entry.Value.Resolve();
        if (value is null or ErrorNode || IsBroken(entry.Value))
        {
            otherwise = new(Presence.Broken, null, entry.Value.Span, path);
            return null;
        }

        if (value is ScalarNode { IsMissing: true })
        {
            otherwise = new(Presence.Missing, null, entry.Key.Span, path);
            return null;
        }

        otherwise = default;
        return value;
    }

    /// <summary>A key that does not stand, but whose absence has been told already, counts as broken.</summary>
    private Presence AbsenceOf(string key) => check is not null && map is not null && check.IsKeyBroken(map, key) ? Presence.Broken : Presence.Missing;

    private bool IsBroken(Node node) => check is not null && (check.IsBroken(node) || (node.Resolve() is { } target && check.IsBroken(target)));

    private Bound<T> Read<T>(string key, Func<ScalarNode, (bool Good, T Value)> read)
    {
        var path = ModelPath.Join(Path, key);
        if (Find(key, path, out var missing) is not { } value) return Cast<T>(missing);
        if (value is not ScalarNode scalar) return new(Presence.Broken, default, value.Span, path);
        var (good, result) = read(scalar);
        return good ? new(Presence.Known, result, scalar.ContentSpan, path) : new(Presence.Broken, default, scalar.ContentSpan, path);
    }
}
