using FluentAssertions;
using TechLint.Cli;
using Xunit;

namespace TechLint.Tests.Unit.Cli;

public sealed class NearestTests
{
    private static readonly string[] Known = ["volume-not-covered", "reference-missing", "beam-gap", "block-material"];

    [Theory]
    [InlineData("volume-not-cover", "volume-not-covered")]
    [InlineData("beam-gpa", "beam-gap")]
    [InlineData("referense-mising", "reference-missing")]
    public void A_slip_finds_its_name(string typed, string expected) => Nearest.Of(typed, Known).Should().StartWith(expected);

    [Theory]
    [InlineData("")]
    [InlineData("something else entirely")]
    public void What_is_like_nothing_finds_nothing(string typed) => Nearest.Of(typed, Known).Should().BeEmpty();

    [Fact]
    public void Very_long_text_is_no_trouble() => Nearest.Of(new string('x', 100_000), Known).Should().BeEmpty();
}
