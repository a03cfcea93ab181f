using FluentAssertions;
using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

public sealed class RulesToComeTests
{
    [Fact]
    public void A_name_is_either_a_rule_or_kept_for_one() =>
        RuleRegistry.Names.Where(RulesToCome.Names.Contains).Should().BeEmpty();

    [Fact]
    public void A_limit_is_either_read_or_kept_for_later() =>
        LimitNames.ComeLater.Where(name => LimitNames.Find(name) is not null).Should().BeEmpty();
}
