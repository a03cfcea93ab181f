using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Each thing that is wrong is one problem under its very characters, in our own words.</summary>
public class ProblemTests
{
    [Theory]
    [InlineData("a: b\n\tc: d\n", "\t", "A tab cannot indent YAML; use spaces.")]
    [InlineData("a:\n  b: c\n  \td: e\n", "\t", "A tab cannot indent YAML; use spaces.")]
    [InlineData("a:\n\tb: c\n", "\t", "A tab cannot indent YAML; use spaces.")]
    [InlineData("a: b: c\n", ":", "A value cannot hold a colon followed by a space; put it in quotes or start a new line.")]
    [InlineData("a: @b\n", "@b", "A value cannot start with this character; put it in quotes.")]
    [InlineData("a: - b\n", "- b", "A list of dashes must start on a line of its own.")]
    [InlineData("a: \"b\nc: d\n", "\"b", "This quotation mark is never closed.")]
    [InlineData("a: \"b \\q\"\n", "\"b \\q\"", "This quoted text holds an escape that YAML does not know.")]
    [InlineData("a: {b: c\nd: e\n", "{", "This brace is never closed.")]
    [InlineData("a: [b, c\nd: e\n", "[", "This bracket is never closed.")]
    [InlineData("a: [b}\n", "}", "A brace cannot close a bracket.")]
    [InlineData("a: {b: c]\n", "]", "A bracket cannot close a brace.")]
    [InlineData("a: {b: c} d\n", "d", "This text follows a value that is already complete.")]
    [InlineData("a: {b: c}}\n", "}", "This text follows a value that is already complete.")]
    [InlineData("a: 'b' c # d\n", "c", "This text follows a value that is already complete.")]
    [InlineData("a: {b: 1 c: 2}\n", "c", "A comma must stand before this.")]
    [InlineData("a: {b: c,, d: e}\n", ",", "Something is missing before this comma.")]
    [InlineData("a: b\nc\nd: e\n", "c", "A key must be followed by a colon and a space.")]
    [InlineData("a: b\nc:d\ne: f\n", "c:d", "A space must follow the colon.")]
    [InlineData("a: b\n- c\nd: e\n", "-", "A list item cannot stand among keys.")]
    [InlineData("a:\n  - b\n  c: d\n", "c: d", "Each item of this list must start with a dash and a space.")]
    [InlineData("a: b\n  c: d\n", "c: d", "This line is indented deeper than the line above allows, whose value is already complete.")]
    [InlineData("a:\n    b: c\n  d: e\n", "d: e", "This line is indented less than the lines beside it.")]
    [InlineData("a: |x\n  b\n", "|x", "After | or > only +, - and one digit may stand on the line.")]
    [InlineData("a: b\n%c\n", "%c", "A key must be followed by a colon and a space.")]
    [InlineData("%b\na: c\n", "%b", "This directive must stand before a line of three dashes.")]
    [InlineData("a: *b\n", "*b", "No anchor of this name stands before this alias.")]
    [InlineData("a: *b\nc: &b d\n", "*b", "No anchor of this name stands before this alias.")]
    [InlineData("a: &b [c, *b]\n", "*b", "This alias stands inside the very node that it repeats.")]
    [InlineData("a: b\n---\nc: d\n", "---", "A file holds one document; what follows this line is not read.")]
    [InlineData("a: b\n...\nc: d\n", "c: d", "A file holds one document; what follows this line is not read.")]
    [InlineData("? [a, b]\n: c\n", "[a, b]", "Only text can be a key.")]
    [InlineData("a: b\0c\n", "\0", "This character cannot stand in YAML text.")]
    [InlineData("a: b\u0007\n", "\u0007", "This character cannot stand in YAML text.")]
    public void One_fault_is_one_problem(string text, string characters, string sentence)
    {
        foreach (var variant in new[] { text, text.Replace("\n", "\r\n"), "\uFEFF" + text })
        {
            var tree = Reading.Of(variant);
            var problem = tree.Problems.Should().ContainSingle(because: TreeDump.Problems(tree)).Subject;
            problem.Code.Should().Be("yaml-syntax");
            problem.Arguments.Should().Equal(sentence);
            tree.Slice(problem.Span).Should().Be(characters);
            Reading.Flaw(tree).Should().BeNull();
        }
    }

    [Fact]
    public void A_tab_is_told_at_the_tab_and_its_line_is_read()
    {
        var tree = Reading.Of("weld:\n  joint: butt\n\tlength: 6 m\n  cap: flush\n");
        tree.Problems.Should().ContainSingle().Which.Span.Should().Be(new TextSpan(20, 1));
        ((MappingNode)tree.At("weld")).Entries.Select(e => e.Key.Value).Should().Equal("joint", "length", "cap");
    }

    [Fact]
    public void The_second_of_two_equal_keys_is_told()
    {
        var tree = Reading.Of("a: 1\nb: {c: 1, c: 2}\n'a': 3\n");
        tree.Problems.Select(p => (p.Code, p.Argument(0), tree.Slice(p.Span)))
            .Should().Equal(("duplicate-key", "c", "c"), ("duplicate-key", "a", "'a'"));
        tree.Problems[0].Span.Start.Should().Be(15);
        ((MappingNode)tree.Root!).Find("a")!.Value.Span.Start.Should().Be(3);
    }

    [Fact]
    public void Equal_keys_are_found_among_many()
    {
        var keys = Enumerable.Range(0, 12).Select(i => $"k{i}: 1\n");
        Reading.Of(string.Concat(keys) + "k3: 2\n").Problems.Should().ContainSingle().Which.Argument(0).Should().Be("k3");
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n \n")]
    [InlineData("# nothing\n")]
    [InlineData("\uFEFF")]
    [InlineData("---\n")]
    [InlineData("---\n# nothing\n...\n")]
    public void A_text_without_content_has_no_root_and_no_problem(string text)
    {
        var tree = Reading.Sound(text);
        tree.Root.Should().BeNull();
    }

    [Fact]
    public void Text_is_read_on_behind_a_forbidden_character()
    {
        var tree = Reading.Of("a: x\0y\nb: c\n");
        ((ScalarNode)tree.At("b")).Value.Should().Be("c");
        tree.Slice(tree.At("a")).Should().Be("x\0y");
    }

    [Fact]
    public void Problems_come_in_the_order_of_their_places()
    {
        var tree = Reading.Of("a: *x\na: @b\nb: 'c\nd: {e: 1, e: 2\n");
        tree.Problems.Should().HaveCountGreaterThan(3);
        tree.Problems.Select(p => p.Span.Start).Should().BeInAscendingOrder();
    }
}
