using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

public sealed class ExplainTests
{
    public static TheoryData<string> All => Executables.All;

    [Theory]
    [MemberData(nameof(All))]
    public void Without_a_rule_all_are_listed_and_each_explains_itself(string executable)
    {
        var list = Outcome.Of(executable, Repository.Root, "explain");
        list.Status.Should().Be(0);
        list.Output.Should().Contain("volume-not-covered").And.Contain("unit-missing").And.Contain("reference-missing");

        var one = Outcome.Of(executable, Repository.Root, "explain", "volume-not-covered");
        one.Status.Should().Be(0);
        one.Output.Should().Contain("volume-not-covered").And.Contain("iso-13588-level-b");
        one.Output.Split('\n').Should().OnlyContain(line => line.Length <= 100);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_name_that_is_nearly_right_is_helped(string executable)
    {
        var outcome = Outcome.Of(executable, Repository.Root, "explain", "volume-not-coverd");
        outcome.Status.Should().Be(2);
        outcome.Error.Should().Contain("volume-not-covered");
    }
}
