using FluentAssertions;
using TechLint.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Files;

public sealed class FileSelectionTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public FileSelectionTests() => folder
        .With("samples/techlint.yaml").With("samples/techniques/a.technique.yaml").With("samples/techniques/b.technique.yaml")
        .With("samples/equipment/w.equipment.yaml").With("samples/flawed/techlint.yaml").With("samples/flawed/f.technique.yaml")
        .With("loose/l.technique.yaml").With("docs/readme.md").With("odd/st*r.technique.yaml");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_folder_leaves_the_workspaces_nested_in_it_out_and_says_so()
    {
        var selection = Select("samples");
        Files(selection).Should().Equal("samples: equipment/w.equipment.yaml techlint.yaml techniques/a.technique.yaml techniques/b.technique.yaml");
        selection.NestedWorkspaces.Should().Equal(folder.At("samples/flawed"));
    }

    [Theory]
    [InlineData("samples/flawed", "samples/flawed: f.technique.yaml techlint.yaml")]
    [InlineData("samples/flawed/f.technique.yaml", "samples/flawed: f.technique.yaml")]
    [InlineData("samples/techniques", "samples: techniques/a.technique.yaml techniques/b.technique.yaml")]
    [InlineData("samples/techniques/../techniques/./a.technique.yaml", "samples: techniques/a.technique.yaml")]
    [InlineData("loose", "loose: l.technique.yaml")]
    [InlineData("loose/l.technique.yaml", "loose: l.technique.yaml")]
    [InlineData("samples/**/a.*", "samples: techniques/a.technique.yaml")]
    [InlineData("samples/tech*/[ab].technique.yaml", "samples: techniques/a.technique.yaml techniques/b.technique.yaml")]
    [InlineData("odd/st*r.technique.yaml", "odd: st*r.technique.yaml")]
    public void A_path_finds_its_workspace(string path, string expected) => Files(Select(path)).Should().Equal(expected);

    [Fact]
    public void Paths_in_several_workspaces_are_grouped_and_each_file_is_taken_once() =>
        Files(Select("samples/techniques/", "samples/flawed/", "samples/flawed", "samples/techniques/a.technique.yaml", "samples/*/*.technique.yaml")).Should().Equal(
            "samples: techniques/a.technique.yaml techniques/b.technique.yaml",
            "samples/flawed: f.technique.yaml techlint.yaml");

    [Theory]
    [InlineData("absent", SelectionFault.NotFound)]
    [InlineData("", SelectionFault.NotFound)]
    [InlineData("a\0b", SelectionFault.NotFound)]
    [InlineData("docs", SelectionFault.NothingMatched)]
    [InlineData("docs/*.yaml", SelectionFault.NothingMatched)]
    [InlineData("nowhere/**", SelectionFault.NothingMatched)]
    [InlineData("docs/readme.md", SelectionFault.UnknownKind)]
    [InlineData("-", SelectionFault.Unnamed)]
    public void A_path_that_gives_nothing_is_a_problem_of_the_call(string path, SelectionFault fault) =>
        Select(path).Problems.Should().Equal(new SelectionProblem(path, fault));

    [Fact]
    public void A_named_link_out_of_the_workspace_is_refused()
    {
        using var elsewhere = new TemporaryFolder();
        elsewhere.With("x.technique.yaml");
        folder.WithLink("samples/out.technique.yaml", elsewhere.At("x.technique.yaml"));
        Select("samples/out.technique.yaml").Problems.Single().Fault.Should().Be(SelectionFault.OutsideRoot);
    }

    [Fact]
    public void A_given_root_holds_every_path_and_is_what_no_path_means()
    {
        Files(FileSelection.Of(folder.Path, ["samples/techniques/a.technique.yaml"], ".", null)).Should().Equal(
            ": samples/techniques/a.technique.yaml");
        Files(FileSelection.Of(folder.Path, ["samples/techniques/a.technique.yaml"], "samples/", null)).Should().Equal(
            "samples: techniques/a.technique.yaml");
        FileSelection.Of(folder.Path, ["samples"], "loose", null).Problems.Single().Fault.Should().Be(SelectionFault.OutsideRoot);
        Files(FileSelection.Of(folder.Path, [], "loose", null)).Should().Equal("loose: l.technique.yaml");
        Files(FileSelection.Of(folder.At("samples/flawed"), [], null, null)).Should().Equal("samples/flawed: f.technique.yaml techlint.yaml");
    }

    [Fact]
    public void Standard_input_takes_the_place_of_the_file_it_names()
    {
        var selection = FileSelection.Of(folder.Path, ["-"], null, "samples/techniques/new.technique.yaml");
        selection.StandardInput.Should().Be(new StandardInputPlace(folder.At("samples"), "techniques/new.technique.yaml"));
        Files(selection).Should().Equal("samples: techniques/new.technique.yaml");
        FileSelection.Of(folder.Path, ["-"], null, "x.txt").Problems.Single().Fault.Should().Be(SelectionFault.UnknownKind);
    }

    private FileSelection Select(params string[] paths) => FileSelection.Of(folder.Path, paths, null, null);

    private IEnumerable<string> Files(FileSelection selection)
    {
        selection.Problems.Should().BeEmpty();
        return selection.Workspaces.Select(one => Path.GetRelativePath(folder.Path, one.Store.Root).TrimStart('.') + ": " + string.Join(' ', one.Files));
    }
}
