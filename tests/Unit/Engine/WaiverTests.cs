using FluentAssertions;
using TechLint.Engine;
using TechLint.Tests.Unit.Rules;
using Xunit;

namespace TechLint.Tests.Unit.Engine;

public sealed class WaiverTests
{
    [Fact]
    public void A_valid_waiver_hides_its_finding_and_counts_it()
    {
        var run = Run("unused-definition", "references/spare");
        run.Findings.Should().ContainSingle().Which.WaivedBy.Should().Be("L. Marchetti");
        run.Summary.Should().Be(new CheckSummary(5, 0, 0, 0, 1, 0, 0, 0, 0));
    }

    [Theory]
    [InlineData("waiver-expired", "unused-definition", "references/spare", ", approved-by: L. Marchetti", "2026-11-23")]
    [InlineData("waiver-unapproved", "unused-definition", "references/spare", "", "2027-03-31")]
    [InlineData("waiver-unknown-rule", "unused-definitions", "references/spare", ", approved-by: L. Marchetti", "2027-03-31")]
    [InlineData("waiver-forbidden", "reference-missing", "references/spare", ", approved-by: L. Marchetti", "2027-03-31")]
    [InlineData("waiver-unused", "unused-definition", "references/spar", ", approved-by: L. Marchetti", "2027-03-31")]
    public void Any_other_is_itself_a_finding_and_hides_nothing(string finds, string rule, string at, string approved, string until)
    {
        var run = Run(rule, at, approved, until);
        run.Findings.Should().OnlyContain(found => found.WaivedBy == null);
        run.Findings.Select(found => found.Finding.Rule).Should().BeEquivalentTo("unused-definition", finds);
    }

    private static CheckRun Run(string rule, string at, string approved = ", approved-by: L. Marchetti", string until = "2027-03-31") => House.Check(
        House.Base.WithSpare().Appended(House.Floor, $"waivers:\n  - {{rule: {rule}, at: {at}, reason: \"Kept, GM-Q-031\"{approved}, until: {until}}}\n"));
}
