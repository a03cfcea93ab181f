using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Recovery is a second reader; on sound text it must say what the first one says.</summary>
public class BothWaysAgreeTests
{
    public static TheoryData<string> Texts => [.. Syntax.Texts.Sound, Syntax.Texts.Technique, Syntax.Texts.Equipment];

    [Theory]
    [MemberData(nameof(Texts))]
    public void Recovery_gives_it_without_asking_the_parser(string text) => Compare(text, YamlReader.Way.Unaided);

    [Theory]
    [MemberData(nameof(Texts))]
    public void Recovery_gives_the_parsers_tree(string text) => Compare(text, YamlReader.Way.Recovering);

    [Theory]
    [MemberData(nameof(Texts))]
    public void They_agree_with_carriage_returns_too(string text) => Compare(text.Replace("\n", "\r\n"), YamlReader.Way.Unaided);

    private static void Compare(string text, YamlReader.Way way)
    {
        var whole = Reading.Sound(text);
        var recovered = Reading.Of(text, way);
        TreeDump.Problems(recovered).Should().BeEmpty();
        TreeDump.Of(recovered).Should().Be(TreeDump.Of(whole));
        Reading.Flaw(whole).Should().BeNull();
    }
}
