using System.Diagnostics;
using System.Text;
using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Hostile texts end soon, in a problem that says which ceiling was reached.</summary>
public class LimitTests
{
    // Measured at well under a second each on a loaded machine; far above that, work has ceased to be bounded.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private static string Repeat(string text, int count) => new StringBuilder(text.Length * count).Insert(0, text, count).ToString();

    private static SyntaxTree InTime(string text)
    {
        var clock = Stopwatch.StartNew();
        var tree = Reading.Of(text);
        clock.Elapsed.Should().BeLessThan(Patience);
        tree.Problems.Length.Should().BeLessThanOrEqualTo(ReadingLimits.Problems + 4);
        return tree;
    }

    private static void HitsLimit(string text, string ceiling)
    {
        var tree = InTime(text);
        tree.Problems.Should().Contain(p => p.Code == "limit-reached" && p.Argument(0) == ceiling && p.Argument(1).Length > 0, because: TreeDump.Problems(tree));
    }

    [Fact]
    public void A_file_too_long_is_not_read()
    {
        var text = Repeat("a: b\n", 2_000_000);
        HitsLimit(text, "the length of a file");
        Reading.Of(text).Root.Should().BeNull();
    }

    [Fact]
    public void A_line_of_a_megabyte_is_not_read() => HitsLimit("a: b\nc: " + new string('x', 1_000_000), "the length of a line");

    [Fact]
    public void A_million_dashes_are_cut_off()
    {
        var tree = InTime(Repeat("- \n", 1_000_000));
        tree.Problems.Should().ContainSingle().Which.Argument(0).Should().Be("nodes in a file");
        ((SequenceNode)tree.Root!).Items.Length.Should().BeGreaterThan(200_000);
    }

    public static TheoryData<string, int> Openings => new()
    {
        { "[", 60_000 }, { "[\n", 100_000 }, { "{a: ", 16_000 }, { "{a:\n", 100_000 }, { "- ", 30_000 }, { "[{a: ", 12_000 },
    };

    [Theory]
    [MemberData(nameof(Openings))]
    public void Deep_nesting_ends(string opening, int count) => HitsLimit(Repeat(opening, count), "nesting");

    [Fact]
    public void Deep_blocks_end_and_their_neighbours_are_read()
    {
        var deep = string.Concat(Enumerable.Range(1, 1000).Select(i => new string(' ', i) + "a:\n"));
        var tree = InTime("before: x\ndeep:\n" + deep + "after: y\n");
        tree.Problems.Should().ContainSingle().Which.Argument(0).Should().Be("nesting");
        tree.Slice(tree.At("before")).Should().Be("x");
        tree.Slice(tree.At("after")).Should().Be("y");
    }

    [Fact]
    public void Nesting_below_the_ceiling_is_sound()
    {
        var tree = Reading.Sound("a: " + new string('[', 60) + new string(']', 60));
        TreeDump.Of(Reading.Of(tree.Source.Text, YamlReader.Way.Unaided)).Should().Be(TreeDump.Of(tree));
    }

    [Fact]
    public void Aliases_that_multiply_are_cut_off()
    {
        var text = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x, x]\n");
        for (var c = 'b'; c < 'n'; c++) text.Append($"{c}: &{c} [{string.Join(", ", Enumerable.Repeat("*" + (char)(c - 1), 10))}]\n");
        var tree = InTime(text.ToString());
        tree.Problems.Should().ContainSingle().Which.Argument(0).Should().Be("nodes repeated by aliases");
        Expanded(tree.Root!).Should().BeLessThan(2 * ReadingLimits.AliasedNodes);
        tree.At("b", 0).Resolve().Should().BeSameAs(tree.At("a"));
    }

    private static long Expanded(Node node) => node switch
    {
        MappingNode mapping => 1 + mapping.Entries.Sum(e => 1 + Expanded(e.Value)),
        SequenceNode sequence => 1 + sequence.Items.Sum(Expanded),
        AliasNode { Target: { } target } => Expanded(target),
        _ => 1,
    };

    public static TheoryData<string, int> Faults => new()
    {
        { "a: \"b\n", 200_000 }, { "a: {\n", 200_000 }, { "\ta: b\n", 200_000 }, { "a: b: c\n", 200_000 }, { "? a\n", 200_000 }, { "- - - - a: {\n", 50_000 }, { "\0", 60_000 },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Many_faults_end_in_one_word_about_the_rest(string fault, int count) => HitsLimit(Repeat(fault, count), "problems in a file");

    public static TheoryData<string, int> Oddities => new()
    {
        { "&a\n", 200_000 }, { "&a ", 20_000 }, { "? ", 30_000 }, { "\n \"\\\"", 200_000 }, { "%a\n", 200_000 }, { "---\n", 200_000 }, { "a b\n", 200_000 }, { " :\n", 100_000 },
        { "'", 60_000 }, { ", ", 30_000 }, { "*a\n", 100_000 }, { "!<", 30_000 }, { "|\n", 200_000 }, { "\r", 1_000_000 }, { "<<: *a\n", 50_000 },
    };

    [Theory]
    [MemberData(nameof(Oddities))]
    public void Odd_texts_end_too(string piece, int count)
    {
        InTime(Repeat(piece, count));
        InTime("[" + Repeat(piece, count));
        InTime("a: {b: " + Repeat(piece, count));
    }

    [Fact]
    public void One_fault_in_a_long_file_is_found()
    {
        var tree = InTime(string.Concat(Enumerable.Range(0, 50_000).Select(i => $"k{i}: b\n")) + "x y\n");
        tree.Problems.Should().ContainSingle().Which.Argument(0).Should().StartWith("A key must be followed");
        ((MappingNode)tree.Root!).Entries.Length.Should().Be(50_001);
    }
}
