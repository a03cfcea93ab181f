using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

public class NavigationTests
{
    [Fact]
    public void Own_entries_come_before_merged_ones()
    {
        var tree = Reading.Sound("base: &b {x: 1, y: 2}\nmore: &m {y: 3, z: 4}\nall:\n  <<: [*b, *m]\n  x: 9\n");
        var all = (MappingNode)tree.At("all");
        all.EffectiveEntries().Select(e => (e.Key.Value, tree.Slice(e.Value))).Should().Equal(("x", "9"), ("y", "2"), ("z", "4"));
        tree.Slice(all.Find("x")!.Value).Should().Be("9");
        tree.Slice(all.Find("y")!.Value).Should().Be("2");
        all.Find("w").Should().BeNull();
        all.Find("<<").Should().BeNull();
    }

    [Fact]
    public void Merges_go_through_merges_and_stop_at_circles()
    {
        var tree = Reading.Sound("a: &a {x: 1}\nb: &b {<<: *a, y: 2}\nc: {<<: *b}\n");
        ((MappingNode)tree.At("c")).EffectiveEntries().Select(e => e.Key.Value).Should().Equal("y", "x");

        var circle = Reading.Of("a: &a {<<: *a, x: 1}\n");
        circle.Problems.Should().ContainSingle();
        ((MappingNode)circle.At("a")).EffectiveEntries().Select(e => e.Key.Value).Should().Equal("x");
    }

    [Fact]
    public void An_alias_follows_the_last_anchor_before_it()
    {
        var tree = Reading.Sound("a: &x 1\nb: *x\nc: &x 2\nd: *x\n");
        tree.At("b").Resolve().Should().BeSameAs(tree.At("a"));
        tree.At("d").Resolve().Should().BeSameAs(tree.At("c"));
        Reading.Of("a: *x\n").At("a").Resolve().Should().BeNull();
    }

    [Fact]
    public void A_path_leads_from_the_root_to_the_offset()
    {
        const string Text = "a:\n  - {b: cd, e: f}\n  - g:\n";
        var tree = Reading.Sound(Text);
        string[] Path(int offset) => [.. tree.PathTo(offset).Select(s => $"{s.Entry?.Key.Value}#{s.Index} {tree.Slice(s.Node)}")];

        Path(Text.IndexOf("cd", StringComparison.Ordinal) + 1).Should().Equal("#-1 " + Text.Trim(), "a#0 " + Text[5..].Trim(), "#0 {b: cd, e: f}", "b#0 cd");
        tree.PathTo(Text.IndexOf("e:", StringComparison.Ordinal))[^1].Should().Match<TreeStep>(s => s.Node == s.Entry!.Key && s.Index == 1);
        tree.PathTo(Text.IndexOf("g:", StringComparison.Ordinal) + 2)[^1].Node.Should().Match<ScalarNode>(s => s.IsMissing, because: "the caret stands behind the colon");
        tree.PathTo(Text.IndexOf(", e", StringComparison.Ordinal) + 1)[^1].Node.Should().BeOfType<MappingNode>();
        tree.PathTo(1000).Should().BeEmpty();
    }
}
