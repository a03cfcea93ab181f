using FluentAssertions;
using TechLint.Tests.Tools;
using TechLint.Tests.Tools.Pages;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

public sealed class RulePageTests
{
    [Fact]
    public void Every_page_of_the_rules_is_fresh()
    {
        var stale = RulePages.All()
            .Where(page => !File.Exists(Repository.At(page.Path)) || File.ReadAllText(Repository.At(page.Path)).Replace("\r\n", "\n", StringComparison.Ordinal) != page.Text)
            .Select(page => page.Path).Concat(RulePages.Orphans());
        stale.Should().BeEmpty($"the pages follow the rules and their fixtures; renew them with: {RulePages.Command}");
    }
}
