using System.Diagnostics;
using FluentAssertions;
using TechLint.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Files;

public sealed class GlobTests
{
    [Theory]
    [InlineData("*.yaml", "a.yaml", true)]
    [InlineData("*.yaml", "x/a.yaml", false)]
    [InlineData("**/*.yaml", "a.yaml", true)]
    [InlineData("**/*.yaml", "x/y/a.yaml", true)]
    [InlineData("archive/**", "archive/x/a.yaml", true)]
    [InlineData("archive/**", "archive", false)]
    [InlineData("a/**/b/*.yaml", "a/b/c.yaml", true)]
    [InlineData("a/**/b/*.yaml", "a/x/b/y/c.yaml", false)]
    [InlineData("a/**/**/c", "a/c", true)]
    [InlineData("gm-ut-0?4.*", "gm-ut-014.technique.yaml", true)]
    [InlineData("gm-[0-2]x", "gm-1x", true)]
    [InlineData("gm-[!0-2]x", "gm-1x", false)]
    [InlineData("gm-[x", "gm-[x", true)]
    [InlineData("[]]", "]", true)]
    [InlineData("*a*b", "xaab", true)]
    [InlineData("*a*b", "xaac", false)]
    [InlineData("A.yaml", "a.yaml", false)]
    [InlineData("", "", true)]
    public void Matches_as_a_reader_of_patterns_expects(string pattern, string path, bool expected) =>
        Glob.Matches(pattern, path).Should().Be(expected);

    [Fact]
    public void A_hostile_pattern_ends_soon()
    {
        var pattern = string.Concat(Enumerable.Repeat("*a", 200)) + "b/" + string.Concat(Enumerable.Repeat("**/", 200)) + "c";
        var path = new string('a', 2000) + "/" + string.Join('/', Enumerable.Repeat("d", 500));
        var clock = Stopwatch.StartNew();
        Glob.Matches(pattern, path).Should().BeFalse();
        clock.Elapsed.Should().BeLessThan(TimeSpan.FromSeconds(5));
    }
}
