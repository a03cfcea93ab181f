using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Quantities;

public sealed class DigitsTests
{
    [Theory]
    [InlineData(95.94, 100, 1, "95.9")]
    [InlineData(99.97, 100, 1, "99.97")]
    [InlineData(99.99996, 100, 1, "99.99996")]
    [InlineData(100, 100, 1, "100")]
    [InlineData(26.27, 26.25, 1, "26.27")]
    [InlineData(25.96, 26, 0, "25.96")]
    [InlineData(-0.04, 0, 1, "-0.04")]
    [InlineData(152.39, 152.4, 0, "152.39")]
    [InlineData(152.4000001, 152.4, 0, "152.4000001")]
    public void A_displayed_value_never_rounds_onto_its_limit(double value, double limit, int digits, string expected) =>
        Digits.Text(Digits.Apart(value, limit, digits)!.Value).Should().Be(expected);

    [Fact]
    public void A_value_and_a_limit_that_differ_are_shown_apart_and_on_their_own_sides() =>
        Gen.Select(Gen.Int[-1_000_000, 1_000_000], Gen.Int[1, 1_000_000], Gen.Int[0, 3]).Sample((scaled, difference, digits) =>
        {
            var limit = scaled / 1000m;
            var value = limit + (difference / 10_000_000m);
            var shown = Digits.Apart(value, limit, digits);
            shown.Should().NotBe(limit);
            (shown > limit).Should().BeTrue();
        });

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void What_cannot_be_written_out_is_null(double value) => Digits.Apart(value, 100, 1).Should().BeNull();

    [Fact]
    public void Text_has_no_exponent_no_trailing_zeros_and_no_negative_zero()
    {
        Digits.Text(0.0000001m).Should().Be("0.0000001");
        Digits.Text(100.000m).Should().Be("100");
        Digits.Text(-0.0m).Should().Be("0");
        Digits.Text(79228162514264337593543950335m).Should().Be("79228162514264337593543950335");
    }
}
