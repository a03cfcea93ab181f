using FluentAssertions;
using TechLint.Engine;
using TechLint.Rules.Findings;
using TechLint.Tests.Unit.Rules;
using Xunit;

namespace TechLint.Tests.Unit.Engine;

public sealed class SettingsTests
{
    [Fact]
    public void A_rule_can_be_raised()
    {
        var run = Run("rules:\n  unused-definition: {severity: error, reason: \"Spares have misled before\"}\n");
        run.Findings.Should().ContainSingle().Which.Finding.Severity.Should().Be(Severity.Error);
        run.Summary.LoweredBySettings.Should().Be(0);
    }

    [Fact]
    public void A_rule_can_be_lowered_with_a_reason_and_is_counted()
    {
        var run = Run("rules:\n  unused-definition: {severity: note, reason: \"Spares are kept\"}\n");
        run.Findings.Should().ContainSingle().Which.Finding.Severity.Should().Be(Severity.Note);
        run.Summary.LoweredBySettings.Should().Be(1);
    }

    [Fact]
    public void A_rule_can_be_switched_off_with_a_reason_and_is_counted()
    {
        var run = Run("rules:\n  unused-definition: {severity: off, reason: \"Spares are kept\"}\n");
        run.Findings.Should().BeEmpty();
        run.Summary.LoweredBySettings.Should().Be(1);
    }

    [Fact]
    public void Without_a_reason_nothing_is_lowered()
    {
        var run = Run("rules:\n  unused-definition: {severity: off}\n");
        run.Findings.Select(found => found.Finding.Rule).Should().BeEquivalentTo("unused-definition", "missing-key");
        run.Summary.LoweredBySettings.Should().Be(0);
    }

    [Theory]
    [InlineData("floor*", 0)]
    [InlineData("girth*", 1)]
    public void Files_can_be_left_out_with_a_reason_and_are_counted(string match, int findings)
    {
        var run = Run($"paths:\n  - {{match: \"{match}\", check: false, reason: \"Superseded\"}}\n");
        run.Findings.Should().HaveCount(findings);
        run.Summary.Excluded.Should().Be(1);
    }

    private static CheckRun Run(string settings) => House.Check(House.Base.WithSpare().Appended(House.Settings, settings));
}
