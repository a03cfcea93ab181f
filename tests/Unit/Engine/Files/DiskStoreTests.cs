using System.Text;
using FluentAssertions;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Files;

public sealed class DiskStoreTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("utf-8", false)]
    [InlineData("utf-8", true)]
    [InlineData("utf-16", true)]
    [InlineData("utf-16BE", true)]
    public void Reads_utf8_and_marked_utf16_and_keeps_the_mark(string encoding, bool mark)
    {
        const string text = "title: Nähte 🔧\r\n";
        var used = Encoding.GetEncoding(encoding);
        folder.With("a.technique.yaml", [.. mark ? used.GetPreamble() : [], .. used.GetBytes(text)]);
        var read = new DiskStore(folder.Path).Read("a.technique.yaml");
        read.Fault.Should().Be(LookupFault.None);
        read.Source!.Text.Should().Be((mark ? "\uFEFF" : "") + text);
        read.Source.Path.Should().Be("a.technique.yaml");
    }

    [Fact]
    public void Bytes_that_are_no_text_are_said_to_be_none()
    {
        folder.With("bad.yaml", [0x61, 0xC3, 0x28]).With("nul.yaml", [0x61, 0x00]).With("odd.yaml", [0xFF, 0xFE, 0x41])
            .With("lone.yaml", [0xFF, 0xFE, 0x00, 0xD8]).With("utf32.yaml", [0xFF, 0xFE, 0, 0, 0x41, 0, 0, 0]);
        var store = new DiskStore(folder.Path);
        foreach (var name in (string[])["bad.yaml", "nul.yaml", "odd.yaml", "lone.yaml", "utf32.yaml"])
        {
            store.Read(name).Fault.Should().Be(LookupFault.NotText, name);
        }
    }

    [Fact]
    public void A_file_over_the_ceiling_is_too_large_and_one_at_it_is_read()
    {
        folder.With("at.yaml", new string('a', DiskStore.LargestFile)).With("over.yaml", new string('a', DiskStore.LargestFile + 1));
        var store = new DiskStore(folder.Path);
        store.Read("at.yaml").Source!.Text.Length.Should().Be(DiskStore.LargestFile);
        store.Read("over.yaml").Fault.Should().Be(LookupFault.TooLarge);
    }

    [Fact]
    public void Every_way_out_of_the_root_is_refused()
    {
        using var elsewhere = new TemporaryFolder();
        elsewhere.With("secret.yaml");
        folder.WithLink("link.yaml", elsewhere.At("secret.yaml")).WithLink("door", elsewhere.Path)
            .WithLink("sub/up.yaml", "../../" + Path.GetFileName(elsewhere.Path) + "/secret.yaml");
        var store = new DiskStore(folder.Path);
        foreach (var path in (string[])["link.yaml", "door/secret.yaml", "sub/up.yaml", "../x.yaml", "a/../../x.yaml", elsewhere.At("secret.yaml")])
        {
            store.Read(path).Fault.Should().Be(LookupFault.OutsideWorkspace, path);
        }
    }

    [Fact]
    public void Links_that_stay_inside_are_followed_even_where_the_root_itself_is_one()
    {
        using var elsewhere = new TemporaryFolder();
        folder.With("true/a.yaml", "x: 1\n").WithLink("b.yaml", "true/a.yaml").WithLink("c/again.yaml", "../b.yaml");
        elsewhere.WithLink("root", folder.Path);
        new DiskStore(elsewhere.At("root")).Read("c/again.yaml").Source!.Text.Should().Be("x: 1\n");
    }

    [Fact]
    public void Folders_gaps_circles_and_odd_names_are_faults_never_exceptions()
    {
        folder.With("dir.yaml/inside.yaml").WithLink("circle.yaml", "circle.yaml").WithLink("dangling.yaml", "nowhere.yaml");
        var store = new DiskStore(folder.Path);
        store.Read("dir.yaml").Fault.Should().Be(LookupFault.NotAFile);
        store.Read("").Fault.Should().Be(LookupFault.NotAFile);
        store.Read("absent.yaml").Fault.Should().Be(LookupFault.NotFound);
        store.Read("dangling.yaml").Fault.Should().Be(LookupFault.NotFound);
        store.Read("dir.yaml/inside.yaml/deeper.yaml").Fault.Should().Be(LookupFault.NotFound);
        store.Read("circle.yaml").Fault.Should().Be(LookupFault.Unreadable);
        store.Read("a\0b").Fault.Should().Be(LookupFault.NotFound);
        store.Read(new string('n', 5000)).Source.Should().BeNull();
    }

    [Fact]
    public void A_pipe_is_never_waited_for()
    {
        if (OperatingSystem.IsWindows()) return;
        using var make = System.Diagnostics.Process.Start("mkfifo", folder.At("pipe.technique.yaml"));
        make.WaitForExit();
        new DiskStore(folder.Path).Read("pipe.technique.yaml").Source!.Text.Should().BeEmpty();
    }

    [Fact]
    public void Lists_judged_files_in_ordinal_order_and_leaves_nested_workspaces_out()
    {
        folder.With("techlint.yaml").With("b/x.technique.yaml").With("B/x.technique.yaml").With("a.equipment.yaml").With("r.requirements.yaml")
            .With("notes.yaml").With(".git/x.technique.yaml").With("flawed/techlint.yaml").With("flawed/deep/y.technique.yaml")
            .With("with space/ü🔧.technique.yaml").WithLink("loop/again", "..").With("loop/z.technique.yaml");
        new DiskStore(folder.Path).List().Should().Equal(
            "B/x.technique.yaml", "a.equipment.yaml", "b/x.technique.yaml", "loop/z.technique.yaml", "r.requirements.yaml", "techlint.yaml",
            "with space/ü🔧.technique.yaml");
        new DiskStore(folder.Path).Walk("").NestedWorkspaces.Should().Equal("flawed");
    }
}
