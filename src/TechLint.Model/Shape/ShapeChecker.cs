using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>
/// Holds a tree against the shape of its kind of file. One finding per cause: below a broken node, around damage that the YAML reader
/// already names, and for a key whose misspelling is already named, it is silent. Its arguments, by code:
/// <list type="bullet">
/// <item><c>unknown-key</c>: key, nearest known key or empty, the keys that may stand here</item>
/// <item><c>missing-key</c>: key (or several, joined by " or "), its owner</item>
/// <item><c>wrong-value</c>: what was found, what belongs here, a text that would serve or empty</item>
/// <item><c>unit-missing</c>: text, units that would serve</item>
/// <item><c>unit-wrong-kind</c>: text, kind wanted, kind found</item>
/// <item><c>range-reversed</c>: lower end, upper end</item>
/// <item><c>value-implausible</c>: text, what the trade would expect</item>
/// <item><c>duplicate-id</c>: id, the entry's title</item>
/// </list>
/// </summary>
public sealed partial class ShapeChecker
{
    private readonly List<Problem> problems = [];
    private readonly HashSet<(string Code, TextSpan Span)> told = [];
    private readonly HashSet<(Node Node, ValueShape Shape, Demand Demand)> visited = [];
    private readonly Dictionary<Node, Problem?> broken = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<(MappingNode Owner, string Key), Problem?> brokenKeys = [];

    private readonly SyntaxTree tree;

    private ShapeChecker(SyntaxTree tree) => this.tree = tree;

    public static ShapeCheck Check(SyntaxTree tree, FormatKind kind)
    {
        var checker = new ShapeChecker(tree);
        var shape = FormatShapes.Of(kind);
        var owner = FormatShapes.NameOf(kind);
        if (tree.Root is null or ScalarNode { IsMissing: true })
            checker.Report("missing-key", tree.Root?.Span ?? default, [shape.Keys[0].Name, owner]);
        else checker.Check(tree.Root, shape, Demand.None, [], new Place(null, owner, null));
        return new ShapeCheck([.. checker.problems.OrderBy(problem => problem.Span)], checker.broken, checker.brokenKeys);
    }

    /// <summary>Where a value stands.</summary>
    /// <param name="Key">The key that owns it, or null for the root and for list entries.</param>
    /// <param name="Owner">How a message names it.</param>
    /// <param name="Alias">The alias by which it was reached: what is wrong with the whole is wrong there, not at the anchor.</param>
    private readonly record struct Place(TextSpan? Key, string Owner, AliasNode? Alias);

    private void Check(Node node, ValueShape shape, Demand demand, ImmutableArray<PlausibleBand> bands, Place place)
    {
        switch (node)
        {
            case ErrorNode:
                broken[node] = null;
                return;
            case AliasNode { Target: null }:
                broken[node] = null;
                return;
            case AliasNode { Target: { } target } alias:
                // What is wrong at the anchor is told there, once.
                if (broken.TryGetValue(target, out var known)) broken[alias] = known;
                else Check(target, shape, demand, bands, place with { Alias = place.Alias ?? alias });
                return;
        }

        switch (shape)
        {
            case AnyOfShape anyOf: CheckAnyOf(node, anyOf, demand, bands, place); break;
            case ObjectShape group when node is MappingNode mapping: CheckObject(mapping, group, demand, bands, place); break;
            case MapShape map when node is MappingNode mapping: CheckMap(mapping, map, bands); break;
            case ListShape list when node is SequenceNode sequence: CheckList(sequence, list, demand, bands, place); break;
            case ObjectShape or MapShape or ListShape: Wrong(node, shape.Expected, place); break;
            default: CheckScalar(node, shape, bands, place); break;
        }
    }

    private void CheckAnyOf(Node node, AnyOfShape shape, Demand demand, ImmutableArray<PlausibleBand> bands, Place place)
    {
        var serving = node switch
        {
            MappingNode => shape.Alternatives.Where(alternative => alternative is ObjectShape or MapShape).ToArray(),
            SequenceNode => shape.Alternatives.Where(alternative => alternative is ListShape).ToArray(),
            _ => shape.Alternatives.Where(alternative => alternative is not (ObjectShape or MapShape or ListShape)).ToArray(),
        };
        if (serving.Length == 0 || node is ScalarNode { IsMissing: true })
        {
            Wrong(node, shape.Expected, place);
            return;
        }

        var chosen = serving[0];
        if (node is MappingNode mapping && serving.Length > 1)
        {
            // The alternative meant is the one most of whose keys stand here.
            var entries = mapping.EffectiveEntries();
            chosen = serving.MaxBy(alternative =>
                alternative is ObjectShape group ? entries.Count(entry => group.Find(entry.Key.Value) is not null) : 0)!;
        }

        // Where a word fits none of several, say all that belongs here; a number was meant as the one value.
        if (node is ScalarNode scalar && !StartsLikeNumber(scalar.Value)
            && ScalarJudge.Judge(scalar, chosen, bands) is { Code: "wrong-value" } fault)
            WrongScalar(scalar, new ScalarFault("wrong-value", [fault.Arguments[0], shape.Expected, fault.Arguments[2]]), place);
        else Check(node, chosen, demand, bands, place);
    }

    private void CheckScalar(Node node, ValueShape shape, ImmutableArray<PlausibleBand> bands, Place place)
    {
        if (node is not ScalarNode scalar || scalar.IsMissing) Wrong(node, shape.Expected, place);
        else if (ScalarJudge.Judge(scalar, shape, bands) is { } fault) WrongScalar(scalar, fault, place);
    }

    private void CheckList(SequenceNode sequence, ListShape shape, Demand demand, ImmutableArray<PlausibleBand> bands, Place place)
    {
        if (!visited.Add((sequence, shape, demand))) return;
        if (sequence.Items.Length < shape.MinimumCount)
        {
            Wrong(sequence, shape.Expected, place);
            return;
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in sequence.Items)
        {
            Check(item, shape.Item, demand.Items ?? Demand.None, bands, new Place(null, Decapitalise(shape.Item.Title), null));
            if (shape.IdentityKey is { } identity && item.Resolve() is MappingNode mapping
                && mapping.Find(identity) is { Value: var value } && ScalarOf(value) is { IsMissing: false } name
                && !names.Add(name.Value))
            {
                // An entry that an alias repeats whole is wrong at the alias.
                Report("duplicate-id", item is AliasNode ? item.Span : name.ContentSpan, [name.Value, Decapitalise(shape.Item.Title)]);
            }
        }
    }

    private void CheckMap(MappingNode mapping, MapShape shape, ImmutableArray<PlausibleBand> bands)
    {
        if (!visited.Add((mapping, shape, Demand.None))) return;
        foreach (var entry in mapping.EffectiveEntries())
        {
            if (entry.IsBroken)
            {
                broken.TryAdd(entry.Value, null);
                continue;
            }

            if (!MapShape.IsName(entry.Key.Value))
            {
                var problem = Report("wrong-value", entry.Key.Span,
                    [ScalarJudge.Found(entry.Key), "a name of small letters, digits and hyphens", ""]);
                broken.TryAdd(entry.Value, problem);
                continue;
            }

            Check(entry.Value, shape.Value, Demand.None, bands, new Place(entry.Key.Span, entry.Key.Value, null));
        }
    }

    private void CheckObject(MappingNode mapping, ObjectShape shape, Demand demand, ImmutableArray<PlausibleBand> bands, Place place)
    {
        if (!visited.Add((mapping, shape, demand))) return;
        CheckMergeKeys(mapping);
        var entries = mapping.EffectiveEntries();
        demand = demand.And(DemandOf(shape, entries));
        var suspects = CheckKeys(mapping, shape, demand, entries);
        foreach (var entry in entries)
        {
            if (shape.Find(entry.Key.Value) is { } key && !demand.Forbidden.Contains(key.Name, StringComparer.Ordinal))
            {
                Check(entry.Value, key.Value, demand.For(key.Name), key.Plausible.IsEmpty ? bands : key.Plausible,
                    new Place(entry.Key.Span, Decapitalise(key.Title), null));
            }
        }

        CheckMissing(mapping, shape, demand, entries, suspects, place);
        var known = entries.Where(entry => shape.Find(entry.Key.Value) is not null).ToArray();
        if (known.Length > shape.MaximumKeys)
        {
            broken[mapping] = Report("wrong-value", known[shape.MaximumKeys].Key.Span,
                [known[shape.MaximumKeys].Key.Value, $"only one of {Names(shape.Keys.Select(key => key.Name))}", ""]);
        }

        if (shape.IsRange) CheckRange(mapping, entries);
        CheckBore(entries);
    }

    /// <summary>Names unknown keys, and returns the known ones that were most likely meant.</summary>
    private HashSet<string> CheckKeys(MappingNode mapping, ObjectShape shape, Demand demand, ImmutableArray<Entry> entries)
    {
        var meant = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            var name = entry.Key.Value;
            var forbidden = demand.Forbidden.Contains(name, StringComparer.Ordinal);
            if (entry.IsBroken || IsDamaged(entry.Key))
            {
                // A line that is no key: the reader says so. Its first word may still be the key that was meant.
                broken.TryAdd(entry.Value, null);
                continue;
            }

            if (shape.Find(name) is not null && !forbidden) continue;
            var allowed = shape.Keys.Select(key => key.Name).Except(demand.Forbidden, StringComparer.Ordinal).ToArray();
            var nearest = NearestName.Of(name, allowed.Where(key => Find(entries, key) is null).ToArray());
            var problem = Report("unknown-key", entry.Key.Span, [name, nearest ?? "", Names(allowed)]);
            if (entry.Value is not AliasNode) broken.TryAdd(entry.Value, problem);
            if (nearest is null) continue;
            meant.Add(nearest);
            brokenKeys.TryAdd((mapping, nearest), problem);
        }

        return meant;
    }

    private void CheckMissing(MappingNode mapping, ObjectShape shape, Demand demand, ImmutableArray<Entry> entries,
        HashSet<string> suspects, Place place)
    {
        var wanted = shape.Keys.Where(key => key.IsRequired).Select(key => key.Name).Union(demand.Required, StringComparer.Ordinal)
            .Where(key => !demand.Forbidden.Contains(key, StringComparer.Ordinal)).Select(key => (string[])[key])
            .Concat(demand.OneOf.Select(keys => keys.ToArray())).ToList();
        if (entries.Length < shape.MinimumKeys && entries.Length == 0) wanted.Add([.. shape.Keys.Select(key => key.Name)]);
        foreach (var keys in wanted)
        {
            if (keys.Any(key => Find(entries, key) is not null)) continue;
            var silent = keys.Any(key => suspects.Contains(key) || IsLost(key, shape, entries));
            var owner = IdentityOf(entries) is { } id && place.Key is null ? $"{place.Owner} {id.Value}" : place.Owner;
            var names = string.Join(" or ", keys);
            var problem = silent ? null : Report("missing-key", MissingSpan(mapping, entries, place), [names, owner], distinct: names);
            foreach (var key in keys) brokenKeys.TryAdd((mapping, key), problem);
        }
    }

    /// <summary>
    /// True where a key may well stand in damaged text that a problem already covers: in a line that is no key, in an unreadable value,
    /// or in a scalar that ran on over its line.
    /// </summary>
    private bool IsLost(string key, ObjectShape shape, ImmutableArray<Entry> entries) => entries.Any(entry => entry.Value switch
    {
        _ when entry.IsBroken && shape.Find(entry.Key.Value) is null => true,
        ErrorNode error => HasWord(tree.Source.Slice(error.Span).ToString(), key),
        ScalarNode { Style: ScalarStyle.Plain, SpansLines: true } scalar => broken.ContainsKey(scalar) && HasWord(scalar.Value, key),
        _ => false,
    });

    private bool IsDamaged(ScalarNode key) => tree.Problems.Any(problem =>
        problem.Code is "yaml-syntax" && problem.Span.Start <= key.Span.Start && problem.Span.End > key.Span.Start);

    private static bool HasWord(string text, string word) =>
        text.Split([' ', '\t', '\r', '\n', '{', ',', ':'], StringSplitOptions.RemoveEmptyEntries).Contains(word, StringComparer.Ordinal);

    private static TextSpan MissingSpan(MappingNode mapping, ImmutableArray<Entry> entries, Place place) =>
        place.Alias?.Span ?? place.Key ?? IdentityOf(entries)?.ContentSpan
        ?? (mapping.Entries.IsEmpty ? mapping.Span : mapping.Entries[0].Key.Span);

    private static ScalarNode? IdentityOf(ImmutableArray<Entry> entries) =>
        (Find(entries, "id") ?? Find(entries, "station")) is { } entry && ScalarOf(entry.Value) is { IsMissing: false } id ? id : null;

    private void CheckMergeKeys(MappingNode mapping)
    {
        foreach (var entry in mapping.Entries)
        {
            if (!entry.IsMerge) continue;
            var value = entry.Value.Resolve();
            var sound = value is null or MappingNode or ErrorNode
                || (value is SequenceNode list && list.Items.All(item => item.Resolve() is null or MappingNode or ErrorNode));
            if (!sound) Wrong(entry.Value, "an alias of a group of keys", new Place(entry.Key.Span, "", null));
        }
    }

    /// <summary>What the values that stand here ask of the other keys.</summary>
    public static Demand DemandOf(ObjectShape shape, ImmutableArray<Entry> entries)
    {
        var demand = Demand.None;
        foreach (var condition in shape.Conditions)
        {
            if (Holds(condition, shape, entries) is { } holds) demand = demand.And(holds ? condition.Then : condition.Otherwise);
        }

        return demand;
    }

    /// <summary>Null where the value that decides is itself wrong: nothing can be asked then.</summary>
    private static bool? Holds(Condition condition, ObjectShape shape, ImmutableArray<Entry> entries)
    {
        for (var i = 0; i < condition.Path.Length; i++)
        {
            var key = shape.Find(condition.Path[i]);
            if (Find(entries, condition.Path[i]) is not { } entry) return false;
            if (condition.Values.IsEmpty) return true;
            var value = entry.Value.Resolve();
            if (i < condition.Path.Length - 1)
            {
                if (value is not MappingNode mapping || key?.Value is not ObjectShape below) return null;
                entries = mapping.EffectiveEntries();
                shape = below;
                continue;
            }

            if (value is not ScalarNode scalar || key is null || ScalarJudge.Judge(scalar, key.Value, []) is not null) return null;
            return condition.Values.Contains(scalar.Value, StringComparer.Ordinal);
        }

        return true;
    }

    private static Entry? Find(ImmutableArray<Entry> entries, string key)
    {
        foreach (var entry in entries)
        {
            if (string.Equals(entry.Key.Value, key, StringComparison.Ordinal)) return entry;
        }

        return null;
    }

    private static ScalarNode? ScalarOf(Node node) => node.Resolve() as ScalarNode;

    private void Wrong(Node node, string expected, Place place)
    {
        // Nothing stands behind the colon: the key is what there is to show.
        var span = place.Alias?.Span ?? (node is ScalarNode { IsMissing: true } ? place.Key ?? node.Span : node.Span);
        broken[place.Alias ?? node] = Report("wrong-value", span, [ScalarJudge.Found(node), expected, ""]);
    }

    private void WrongScalar(ScalarNode scalar, ScalarFault fault, Place place)
    {
        var problem = Report(fault.Code, place.Alias?.Span ?? scalar.ContentSpan, fault.Arguments);
        broken[(Node?)place.Alias ?? scalar] = problem;
    }

    private Problem Report(string code, TextSpan span, ImmutableArray<string> arguments, string distinct = "")
    {
        var problem = new Problem(code, span, arguments);
        if (told.Add((code + ' ' + distinct, span))) problems.Add(problem);
        return problem;
    }

    private static bool StartsLikeNumber(string text)
    {
        var digits = text.AsSpan().TrimStart("+-");
        return digits.Length > 0 && char.IsAsciiDigit(digits[0]);
    }

    private static string Names(IEnumerable<string> names) => string.Join(", ", names);

    private static string Decapitalise(string title) => title.Length == 0 ? title : char.ToLowerInvariant(title[0]) + title[1..];
}
