using System.Collections.Immutable;
using FluentAssertions;
using TechLint.Model.Shape;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Model;

/// <summary>The checker and the JSON Schema library must agree on every text: sound, or spoilt in one place.</summary>
public class ShapeRefereeTests
{
    private static readonly string[] Nonsense =
    [
        "5", "-5", "0", "5 mm", "-5 mm", "0 mm", "120 deg", "30 deg", "5 MHz", "3 dB", "50 %", "true", ".nan", "~", "nonsense here", "plain", "2026-11-24", "1.5", "Upper-Case", "pipe", "sectorial", "none",
    ];

    public static TheoryData<FormatKind> Kinds => [.. Enum.GetValues<FormatKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Both_find_the_sample_sound(FormatKind kind)
    {
        var tree = ShapeText.Read(ShapeSamples.Of(kind));

        ShapeChecker.Check(tree, kind).Problems.Should().BeEmpty();
        SchemaReferee.Faults(tree, kind).Should().BeEmpty();
        SchemaReferee.IsValid(tree, kind).Should().BeTrue();
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Both_agree_on_every_value_replaced(FormatKind kind)
    {
        var tree = ShapeText.Read(ShapeSamples.Of(kind));
        var turn = 0;
        foreach (var node in Nodes(tree.Root!).ToList())
        {
            // Every value meets some of the nonsense, all nonsense meets some values.
            for (var i = 0; i < 2; i++, turn++) Compare(tree, node, Plain(Nonsense[turn % Nonsense.Length]), kind, "replaced by " + Nonsense[turn % Nonsense.Length]);
            Compare(tree, node, new SequenceNode(node.Span, turn % 4 == 0 ? [] : [Plain("x")], true), kind, "replaced by a list");
            Compare(tree, node, new MappingNode(node.Span, turn % 4 == 0 ? [Entry("x", Plain("y"))] : [], true), kind, "replaced by a group");
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Both_agree_on_every_key_left_out_renamed_or_added(FormatKind kind)
    {
        var tree = ShapeText.Read(ShapeSamples.Of(kind));
        foreach (var mapping in Nodes(tree.Root!).OfType<MappingNode>().ToList())
        {
            foreach (var entry in mapping.Entries)
            {
                Compare(tree, mapping, new MappingNode(mapping.Span, mapping.Entries.Remove(entry), mapping.IsFlow), kind, $"without {entry.Key.Value}");
                var renamed = new Entry(Plain(entry.Key.Value + "-x"), entry.Value, entry.Span);
                Compare(tree, mapping, new MappingNode(mapping.Span, mapping.Entries.Replace(entry, renamed), mapping.IsFlow), kind, $"{entry.Key.Value} renamed");
            }

            foreach (var key in new[] { "from", "angle", "outside-diameter", "frame", "faces", "shape" })
            {
                if (mapping.Entries.Any(entry => entry.Key.Value == key)) continue;
                Compare(tree, mapping, new MappingNode(mapping.Span, mapping.Entries.Add(Entry(key, Plain("1 mm"))), mapping.IsFlow), kind, $"with {key}");
            }
        }
    }

    [Theory]
    [InlineData("square")]
    [InlineData("single-v")]
    [InlineData("single-u")]
    [InlineData("single-bevel")]
    [InlineData("double-u")]
    [InlineData("compound-v")]
    [InlineData("pressure-weld")]
    [InlineData("profile")]
    public void Both_agree_on_every_shape_of_preparation(string shape)
    {
        string[] parts =
        [
            "", ", included-angle: 60 deg", ", bevel-angle: 10 deg, radius: 6 mm", ", outer: {included-angle: 60 deg, upper-included-angle: 20 deg, break-depth: 12 mm}",
            ", inner: {bevel-angle: 8 deg}, outer: {bevel-angle: 8 deg, depth: 12 mm}", ", bond-line: {width: 0.2 mm}", ", opens: inside, root-gap: 3 mm",
            ", faces: {left: [{across: -5 mm, depth: 0 %}, {across: 0 mm, depth: 100 %}], right: [{across: 5 mm, depth: 0 %}, {across: 0 mm, depth: 100 %}]}",
        ];
        foreach (var part in parts)
        {
            var text = ShapeSamples.Technique.Replace(
                "preparation: {shape: double-v, outer: {included-angle: 60 deg, depth: 50 %}, inner: {included-angle: 60 deg},\n                root-face: 4 mm, root-gap: 0 mm, misalignment-at-most: 1.5 mm}",
                $"preparation: {{shape: {shape}{part}}}", StringComparison.Ordinal);
            text.Should().Contain("shape: " + shape);
            Agree(ShapeText.Read(text), FormatKind.Technique, shape + part);
        }
    }

    [Theory]
    [InlineData("{id: b, scan: linear, from: 1, wave: transverse, angle: 55 deg, aperture: {first: 1, count: 8, last: 32}, legs: [1], window: {from: 0 mm, to: 90 mm}}", true)]
    [InlineData("{id: b, scan: linear, from: 1, wave: transverse, angles: {from: 40 deg, to: 60 deg, step: 1 deg}, aperture: {count: 8}, legs: [1], window: {from: 0 mm, to: 90 mm}}", false)]
    [InlineData("{id: b, scan: fixed, from: 3, wave: longitudinal, legs: [1], window: {from: 0 mm, to: 90 mm}}", true)]
    [InlineData("{id: b, scan: fixed, from: 3, wave: longitudinal, legs: [1], window: {before-lateral-wave: 1 us, after-back-wall: 1 us}}", false)]
    [InlineData("{id: b, scan: tandem, transmit: 1, receive: 2, wave: transverse, angle: 45 deg, zone: {from: 30 %, to: 70 %}}", true)]
    [InlineData("{id: b, scan: tandem, from: 1, wave: transverse, angle: 45 deg, zone: {from: 30 %, to: 70 %}}", false)]
    [InlineData("{id: b, scan: total-focusing, from: 1, capture: c1, imaging-path: TT-T, region: {across: {from: -10 mm, to: 10 mm}, depth: {from: 0 mm, to: 25 mm}}, grid: 0.2 mm}", true)]
    [InlineData("{id: b, scan: total-focusing, from: 1, capture: c1, imaging-path: TT-T, wave: transverse, region: {across: {from: -10 mm, to: 10 mm}, depth: {from: 0 mm, to: 25 mm}}, grid: 0.2 mm}", false)]
    [InlineData("{id: b, scan: lamination, from: 1, window: {from: 0 mm, to: 60 mm}}", true)]
    [InlineData("{id: b, scan: coupling-monitor, from: 1}", true)]
    [InlineData("{id: b, scan: coupling-monitor, from: 1, angle: 0 deg}", false)]
    [InlineData("{id: b, scan: sectorial, from: 1, wave: transverse, focus: none}", false)]
    public void Both_agree_on_what_each_scan_needs(string beam, bool sound)
    {
        var text = ShapeSamples.Technique.Replace("    beams:\n", $"    beams:\n      - {beam}\n", StringComparison.Ordinal);
        var tree = ShapeText.Read(text);

        ShapeChecker.Check(tree, FormatKind.Technique).Problems.IsEmpty.Should().Be(sound);
        SchemaReferee.IsValid(tree, FormatKind.Technique).Should().Be(sound);
    }

    [Fact]
    public void The_referee_names_the_place_and_the_keyword()
    {
        var tree = ShapeText.Read("techlint: 1\nscope: [{joint: seams, thickness: 5}]\nextra: 1\n");

        SchemaReferee.Faults(tree, FormatKind.Settings).Should().Contain(fault => fault.At == "/scope/0/thickness")
            .And.Contain(fault => fault.At == "/extra" || fault.Keyword == "additionalProperties");
    }

    private static void Compare(SyntaxTree tree, Node target, Node replacement, FormatKind kind, string how) =>
        Agree(tree with { Root = Rewrite(tree.Root!, target, replacement) }, kind, $"'{tree.Source.Slice(target.Span).ToString().Split('\n')[0]}' at {target.Span.Start} {how}");

    private static void Agree(SyntaxTree tree, FormatKind kind, string how)
    {
        // What no schema can say is left out of the comparison.
        var problems = ShapeChecker.Check(tree, kind).Problems.Where(problem => problem.Code is not ("range-reversed" or "duplicate-id" or "value-implausible")
            && !problem.Argument(1).StartsWith("more than twice", StringComparison.Ordinal)).ToList();

        SchemaReferee.IsValid(tree, kind).Should().Be(problems.Count == 0, $"{how}: {string.Join("; ", problems)} {(problems.Count > 0 ? "" : string.Join("; ", SchemaReferee.Faults(tree, kind)))}");
    }

    private static IEnumerable<Node> Nodes(Node node) => (node switch
    {
        MappingNode mapping => mapping.Entries.SelectMany(entry => Nodes(entry.Value)),
        SequenceNode sequence => sequence.Items.SelectMany(Nodes),
        _ => [],
    }).Prepend(node);

    private static Node Rewrite(Node node, Node target, Node replacement)
    {
        if (ReferenceEquals(node, target)) return replacement;
        if (!node.Span.Contains(target.Span)) return node;
        return node switch
        {
            MappingNode mapping => new MappingNode(mapping.Span,
                [.. mapping.Entries.Select(entry => new Entry(entry.Key, Rewrite(entry.Value, target, replacement), entry.Span))], mapping.IsFlow),
            SequenceNode sequence => new SequenceNode(sequence.Span, [.. sequence.Items.Select(item => Rewrite(item, target, replacement))], sequence.IsFlow),
            _ => node,
        };
    }

    private static ScalarNode Plain(string text) => new(default, text, ScalarStyle.Plain, default, false);

    private static Entry Entry(string key, Node value) => new(Plain(key), value, default);
}
