using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using TechLint.Model.Shape;
using TechLint.Syntax;

namespace TechLint.Engine.Navigating;

/// <summary>Every name of one text, in order of place. Made once for a tree and kept as long as it lives.</summary>
public sealed class NameIndex
{
    private static readonly ConditionalWeakTable<SyntaxTree, NameIndex> Made = [];

    private readonly ImmutableArray<NameUse>.Builder uses = ImmutableArray.CreateBuilder<NameUse>();
    private readonly SyntaxTree tree;

    private NameIndex(SyntaxTree tree)
    {
        this.tree = tree;
        if (tree.Root is not null && FormatKinds.Of(tree.Source.Path) is { } kind) Walk(tree.Root, NameTable.RootOf(kind), "", tree.Root.Span);
        uses.Sort((left, right) => left.Span.CompareTo(right.Span));
        Uses = uses.ToImmutable();
    }

    public ImmutableArray<NameUse> Uses { get; }

    public static NameIndex Of(SyntaxTree tree) => Made.GetValue(tree, static made => new NameIndex(made));

    /// <summary>The name that a caret at an offset touches.</summary>
    public NameUse? At(int offset) => Uses.FirstOrDefault(use => use.Span.Touches(offset));

    private void Walk(Node node, string path, string scope, TextSpan whole)
    {
        switch (node)
        {
            case MappingNode mapping:
                foreach (var entry in mapping.Entries)
                {
                    if (entry.IsBroken || entry.IsMerge) continue;
                    if (NameTable.KeysAreRules(path)) Add(entry.Key, NameKind.Rule, false, "", entry.Span);
                    if (path is "technique/waivers" && entry.Key.Value is "at" && entry.Value is ScalarNode at) AddPlace(at);
                    Walk(entry.Value, path + "/" + entry.Key.Value, scope, whole);
                }

                break;
            case SequenceNode sequence:
                foreach (var item in sequence.Items) Walk(item, path, ScopeOf(item, path) ?? scope, item is MappingNode ? item.Span : whole);
                break;
            case ScalarNode scalar when NameTable.At(path) is { } place && !scalar.IsMissing:
                var scoped = place.Kind is NameKind.Station or NameKind.Beam or NameKind.Reflector;
                Add(scalar, place.Kind, place.IsDefinition, scoped ? scope : "", whole);
                break;
        }
    }

    private static string? ScopeOf(Node item, string path) => path switch
    {
        "technique/setups" or "equipment/blocks" => TextAt(item, "id"),
        "technique/references" => TextAt(item, "block"),
        _ => null,
    };

    private static string TextAt(Node node, string key) => (node as MappingNode)?.Find(key)?.Value.Resolve() is ScalarNode text ? text.Value : "";

    private void Add(ScalarNode scalar, NameKind kind, bool isDefinition, string scope, TextSpan whole) =>
        uses.Add(new NameUse(kind, scalar.Value, scope, OwnSpan(scalar), isDefinition, isDefinition ? whole : scalar.Span));

    /// <summary>A model path names setups, and in them stations and beams; or a reference.</summary>
    private void AddPlace(ScalarNode scalar)
    {
        var span = OwnSpan(scalar);
        if (!tree.Source.Slice(span).SequenceEqual(scalar.Value)) return;
        var parts = scalar.Value.Split('/');
        var start = span.Start;
        for (var i = 0; i < parts.Length; i++)
        {
            (NameKind Kind, string Scope)? kind = (i, parts[0]) switch
            {
                (1, "setups") => (NameKind.Setup, ""),
                (1, "references") => (NameKind.Reference, ""),
                (3, "setups") when parts[2] is "probes" => (NameKind.Station, parts[1]),
                (3, "setups") when parts[2] is "beams" => (NameKind.Beam, parts[1]),
                _ => null,
            };
            var own = new TextSpan(start, parts[i].Length);
            if (kind is { } known && parts[i].Length > 0) uses.Add(new NameUse(known.Kind, parts[i], known.Scope, own, false, own));
            start += parts[i].Length + 1;
        }
    }

    private static TextSpan OwnSpan(ScalarNode scalar)
    {
        var span = scalar.ContentSpan;
        return scalar.Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted && span.Length == scalar.Value.Length + 2
            ? new TextSpan(span.Start + 1, scalar.Value.Length)
            : span;
    }
}
