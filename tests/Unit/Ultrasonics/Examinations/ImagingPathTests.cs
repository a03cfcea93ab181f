using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Examinations;

public sealed class ImagingPathTests
{
    [Theory]
    [InlineData("T-T")]
    [InlineData("L-L")]
    [InlineData("TT-T")]
    [InlineData("TT-TT")]
    [InlineData("LT-TTT")]
    public void A_path_reads_as_it_is_written(string text) => ImagingPath.TryParse(text)!.ToString().Should().Be(text);

    [Fact]
    public void Letters_before_the_hyphen_go_to_the_point_and_those_after_it_come_back()
    {
        var path = ImagingPath.TryParse("LT-T")!;
        path.Transmit.Should().Equal(Wave.Longitudinal, Wave.Transverse);
        path.Receive.Should().Equal(Wave.Transverse);
        path.Should().Be(ImagingPath.TryParse("LT-T"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("T")]
    [InlineData("T-")]
    [InlineData("-T")]
    [InlineData("T-T-T")]
    [InlineData("TTTT-T")]
    [InlineData("t-t")]
    [InlineData("T-S")]
    public void What_is_no_path_is_none(string text) => ImagingPath.TryParse(text).Should().BeNull();
}
