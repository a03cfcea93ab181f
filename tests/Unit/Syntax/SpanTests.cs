using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Every span covers its very characters.</summary>
public class SpanTests
{
    [Theory]
    [InlineData("a: b  # c\n", "b")]
    [InlineData("a:   b c  \n", "b c")]
    [InlineData("a: 'b c' # d\n", "'b c'")]
    [InlineData("a: \"b\\tc\"\n", "\"b\\tc\"")]
    [InlineData("a: &x !t b # c\n", "&x !t b")]
    [InlineData("a: &x\n  b\n", "&x\n  b")]
    [InlineData("a: |\n  b\n  c\n\n\nd: e\n", "|\n  b\n  c")]
    [InlineData("a: >-  # why\n  b\n# d\n", ">-  # why\n  b")]
    [InlineData("a: | # why\nd: e\n", "|")]
    [InlineData("a: b\n  c\n\nd: e", "b\n  c")]
    [InlineData("a: 'b\n  c'\nd: e", "'b\n  c'")]
    [InlineData("a: {b: c, d: [e]} # f\n", "{b: c, d: [e]}")]
    [InlineData("a: &x { }\n", "&x { }")]
    [InlineData("a: [b,\n  c\n  ]  # d\n", "[b,\n  c\n  ]")]
    [InlineData("a:\n  b: c # d\n  e:\n\n# f\ng: h", "b: c # d\n  e:")]
    [InlineData("a: &x\n  b: c\n\n", "&x\n  b: c")]
    [InlineData("a:\n  - b\n  - c: d # e\n\nf: g", "- b\n  - c: d")]
    [InlineData("a:\n- b\n-\nc: d", "- b\n-")]
    [InlineData("a: *x\n", "*x")]
    [InlineData("\uFEFFa: b", "b")]
    [InlineData("a: \U0001F600 b", "\U0001F600 b")]
    [InlineData("a:\tb\t\n", "b")]
    [InlineData("a: b\rc: d", "b")]
    [InlineData("a: b\r\nc: d", "b")]
    public void A_value_covers_its_own_text(string text, string expected)
    {
        var tree = Reading.Of(text);
        tree.Slice(tree.At("a")).Should().Be(expected);
        var recovered = Reading.Of(text, YamlReader.Way.Unaided);
        recovered.Slice(recovered.At("a")).Should().Be(expected);
    }

    [Theory]
    [InlineData("a:\nb: c", 2)]
    [InlineData("a:   \nb: c", 2)]
    [InlineData("a: # later\nb: c", 2)]
    [InlineData("a :\n", 3)]
    [InlineData("{a: , b: c}", 3)]
    [InlineData("{a:, b: c}", 3)]
    [InlineData("{a:}", 3)]
    [InlineData("{a, b: c}", 2)]
    [InlineData("\uFEFFa:\n", 3)]
    [InlineData("a: &x\nb: c", 5)]
    public void A_missing_value_stands_right_behind_its_colon(string text, int offset)
    {
        foreach (var way in Enum.GetValues<YamlReader.Way>())
        {
            var value = (ScalarNode)Reading.Of(text, way).At("a");
            value.IsMissing.Should().BeTrue();
            value.ContentSpan.Should().Be(new TextSpan(offset, 0));
            value.Span.End.Should().Be(offset);
        }
    }

    [Fact]
    public void A_missing_item_stands_right_behind_its_dash()
    {
        var items = ((SequenceNode)Reading.Sound("-   # later\n- b\n-\n").Root!).Items;
        items[0].Span.Should().Be(new TextSpan(1, 0));
        items[2].Span.Should().Be(new TextSpan(17, 0));
    }

    [Fact]
    public void An_entry_runs_from_its_key_to_its_value()
    {
        var tree = Reading.Sound("a:\n  'b c' : {d: e}  # f\n  g: h\n");
        var entries = ((MappingNode)tree.At("a")).Entries;
        tree.Slice(entries[0].Span).Should().Be("'b c' : {d: e}");
        tree.Slice(entries[0].Key).Should().Be("'b c'");
        tree.Slice(((MappingNode)tree.Root!).Entries[0].Span).Should().Be("a:\n  'b c' : {d: e}  # f\n  g: h");
    }

    [Fact]
    public void Content_leaves_anchor_and_tag_out()
    {
        var tree = Reading.Sound("a: &x !t 'b'\n");
        var scalar = (ScalarNode)tree.At("a");
        (scalar.Anchor, scalar.Tag, scalar.Value).Should().Be(("x", "!t", "b"));
        tree.Slice(scalar.ContentSpan).Should().Be("'b'");
    }

    [Fact]
    public void A_pair_in_a_list_is_a_mapping_without_braces()
    {
        var tree = Reading.Sound("a: [b: c, d]\n");
        var pair = (MappingNode)tree.At("a", 0);
        tree.Slice(pair).Should().Be("b: c");
        pair.IsFlow.Should().BeTrue();
    }

    [Theory]
    [InlineData("a: b c\n", false)]
    [InlineData("a: b\n  c\n", true)]
    [InlineData("a: \"b\n  c\"\n", true)]
    [InlineData("a: &x\n  b\n", false)]
    public void Text_over_several_lines_is_marked(string text, bool expected) =>
        ((ScalarNode)Reading.Sound(text).At("a")).SpansLines.Should().Be(expected);

    [Fact]
    public void Every_key_of_the_technique_covers_its_name()
    {
        foreach (var text in new[] { Texts.Technique, Texts.Equipment, "\uFEFF" + Texts.Technique.Replace("\n", "\r\n") })
        {
            var tree = Reading.Sound(text);
            var scalars = Reading.All(tree).Select(n => n.Node).OfType<ScalarNode>().Where(s => s is { Style: ScalarStyle.Plain, SpansLines: false }).ToList();
            scalars.Should().HaveCountGreaterThan(100);
            scalars.Should().OnlyContain(s => tree.Slice(s.ContentSpan) == s.Value);
        }
    }

    [Fact]
    public void Comments_are_found_in_the_gaps()
    {
        var tree = Reading.Sound("# one\na: 'x # y' # two\nb: c#d\ne: | # three\n  # text\nf: [g, # four\n  h]\n#five");
        tree.Comments.Select(c => tree.Slice(c.Span)).Should().Equal("# one", "# two", "# three", "# four", "#five");
    }

    [Fact]
    public void The_tree_keeps_the_file_as_it_stands()
    {
        const string Text = "\uFEFFa: b\r\nc: \U0001F600\rd: e\n";
        var tree = Reading.Sound(Text);
        tree.Source.Text.Should().BeSameAs(Text);
        tree.At("a").Span.Should().Be(new TextSpan(4, 1));
        ((MappingNode)tree.Root!).Entries[0].Key.Value.Should().Be("a");
        tree.Slice(tree.At("c")).Should().Be("\U0001F600");
        tree.Slice(tree.At("d")).Should().Be("e");
    }
}
