using FluentAssertions;
using TechLint.Rules.Registry;
using Xunit;

namespace TechLint.Tests.Unit.Architecture;

/// <summary>A rule is one small class in its family's folder, and the registry knows it.</summary>
public sealed class RuleClassTests
{
    public static TheoryData<string> Rules => [.. RuleRegistry.All.Select(rule => rule.Name)];

    [Fact]
    public void Every_rule_class_is_in_the_registry()
    {
        var written = typeof(Rule).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Rule)) && !type.IsAbstract);
        RuleRegistry.All.Select(rule => rule.GetType()).Should().BeEquivalentTo(written);
        RuleRegistry.All.Select(rule => rule.Name).Should().OnlyHaveUniqueItems();
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_is_sealed_and_its_file_stands_in_the_folder_of_its_family_under_its_name(string name)
    {
        var rule = RuleRegistry.Find(name)!;
        var type = rule.GetType();
        type.IsSealed.Should().BeTrue();
        type.Namespace.Should().Be($"TechLint.Rules.{rule.Description.Family}");
        string.Concat(name.Split('-').Select(word => char.ToUpperInvariant(word[0]) + word[1..])).Should().Be(type.Name);
        File.Exists(Path.Combine(Repository.Root, "src", "TechLint.Rules", rule.Description.Family.ToString(), type.Name + ".cs")).Should().BeTrue();
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_explains_itself_in_whole_sentences(string name)
    {
        var description = RuleRegistry.Find(name)!.Description;
        foreach (var text in new[] { description.Summary, description.Why, description.Remedy })
        {
            text.Should().MatchRegex(@"^[A-Z0-9].*\.$");
        }
    }
}
