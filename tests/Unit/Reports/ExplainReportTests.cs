using FluentAssertions;
using TechLint.Engine;
using TechLint.Model.Requirements;
using TechLint.Reports;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class ExplainReportTests
{
    [Fact]
    public void A_rule_is_explained_with_its_limits_and_a_caution() => Runs.Written(output => ExplainReport.WriteRule(
        output, Runs.Rule,
        [new LimitSource("coverage-at-least", "at least 100 %", new Citation("iso-13588-level-b", "ISO 13588:2019, 8.1", Basis.Memory))])).Should().Be("""
        volume-not-covered (error, coverage)

        Part of the examined volume is seen by no beam.

        Why
          A flaw there is missed.

        What to do
          Move the probe or add a beam.

        Limits
          coverage-at-least
            iso-13588-level-b: at least 100 %. ISO 13588:2019, 8.1 (from memory)

        Caution
          This rule defers to the governing code, to the owner's specification and to
          licensed practice: where they differ from it, they hold. No check by TechLint
          replaces the approval of the technique by a qualified Level III or its
          demonstration on a representative block.

        """);

    [Fact]
    public void A_limit_that_no_built_in_set_states_is_said_to_be_the_owners() =>
        Runs.Written(output => ExplainReport.WriteRule(output, Runs.Rule, [])).Should().Contain("No built-in requirement set states it");

    [Fact]
    public void The_list_goes_by_family_and_keeps_its_columns()
    {
        var other = new RuleDescription("beam-gap", RuleFamily.Coverage, Severity.Warning, "Beams leave a gap.", "w", "r");
        var document = new RuleDescription("yaml-syntax", RuleFamily.Document, Severity.Error, "The text is no YAML.", "w", "r");
        Runs.Written(output => ExplainReport.WriteList(output, [document, other, Runs.Rule])).Should().Be("""
            Is the text sound? (document)
              yaml-syntax         error    The text is no YAML.

            Does it see the weld? (coverage)
              beam-gap            warning  Beams leave a gap.
              volume-not-covered  error    Part of the examined volume is seen by no beam.

            """);
    }
}
