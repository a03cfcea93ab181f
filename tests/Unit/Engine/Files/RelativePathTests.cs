using FluentAssertions;
using TechLint.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Files;

public sealed class RelativePathTests
{
    [Theory]
    [InlineData("techniques/a.technique.yaml", "../equipment/w.equipment.yaml", "equipment/w.equipment.yaml")]
    [InlineData("a.technique.yaml", "w.equipment.yaml", "w.equipment.yaml")]
    [InlineData("a/b/c.yaml", "./x//y/../z.yaml", "a/b/x/z.yaml")]
    [InlineData("a/b/c.yaml", @"..\..\e\w.yaml", "e/w.yaml")]
    [InlineData("a/b/c.yaml", "..", "a")]
    [InlineData("a.yaml", "", "")]
    [InlineData("a.yaml", "odd name ü~#?.yaml", "odd name ü~#?.yaml")]
    [InlineData("a.yaml", "...", "...")]
    public void A_path_is_made_plain_from_the_folder_of_its_file(string from, string path, string expected) =>
        RelativePath.Resolve(from, path).Should().Be(expected);

    [Theory]
    [InlineData("a.yaml", "../x.yaml")]
    [InlineData("a/b.yaml", "../../x.yaml")]
    [InlineData("a/b.yaml", "../../a/x.yaml")]
    [InlineData("a.yaml", "/etc/passwd")]
    [InlineData("a.yaml", @"\\server\share\x.yaml")]
    [InlineData("a.yaml", @"C:\x.yaml")]
    [InlineData("a.yaml", "c:x.yaml")]
    public void A_path_that_leads_out_is_refused(string from, string path) => RelativePath.Resolve(from, path).Should().BeNull();

    [Theory]
    [InlineData("", "a/b", true)]
    [InlineData("a", "a", true)]
    [InlineData("a", "a/b", true)]
    [InlineData("a", "ab", false)]
    [InlineData("a/b", "a", false)]
    public void Within_a_folder_means_whole_names(string folder, string path, bool expected) =>
        RelativePath.IsWithin(folder, path).Should().Be(expected);
}
