using FluentAssertions;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Tests.Tools.Fixtures;
using TechLint.Tests.Unit.Engine.Files;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>Nonsense gives one clear finding at the right characters: never a crash, a hang or a silent pass.</summary>
public sealed class BadInputTests
{
    [Theory]
    [InlineData("  thickness: 10 mm", "  thickness: [10 mm]", "wrong-value", "[10 mm]")]
    [InlineData("  thickness: 10 mm", "  thickness: .nan", "wrong-value", ".nan")]
    [InlineData("  thickness: 10 mm", "  thickness: NaN mm", "wrong-value", "NaN mm")]
    [InlineData("  thickness: 10 mm", "  thickness: 0 mm", "wrong-value", "0 mm")]
    [InlineData("  thickness: 10 mm", "  thickness: -10 mm", "wrong-value", "-10 mm")]
    [InlineData("  thickness: 10 mm", "  thickness: 1e300 mm", "wrong-value", "1e300 mm")]
    [InlineData("  thickness: 10 mm", "  thickness: true", "wrong-value", "true")]
    [InlineData("angles: {from: 40 deg, to: 72 deg, step: 1 deg},\n         aperture: {first: 1, count: 16}, focus: none, legs: [1, 2], window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right", "angles: {from: 40 deg, to: 120 deg, step: 1 deg},\n         aperture: {first: 1, count: 16}, focus: none, legs: [1, 2], window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right", "wrong-value", "120 deg")]
    [InlineData("setups:\n  - id: floor", "setups: 7\nsetup-notes:\n  - id: floor", null, null)]
    [InlineData("      increment: 1 mm", "      increment: {a: 1}", null, null)]
    [InlineData("title: Surge tank floor, plate seams 10 mm", "title: [a, b]", "wrong-value", "[a, b]")]
    [InlineData("legs: [1, 2], window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right", "legs: one, window: {from: 0 mm, to: 80 mm}, reference: holes}\n      - {id: sector-right", "wrong-value", "one")]
    public void One_finding_at_the_characters(string old, string text, string? rule, string? marked)
    {
        var store = House.Base;
        var whole = store.Files[House.Floor].Source!.Text;
        var at = whole.IndexOf(old, StringComparison.Ordinal);
        at.Should().BeGreaterThan(0);
        var run = House.Check(store.With(House.Floor, string.Concat(whole.AsSpan(0, at), text, whole.AsSpan(at + old.Length))));
        run.Findings.Should().NotBeEmpty().And.NotContain(found => found.Finding.Rule == "internal-error");
        if (rule is null) return;
        var (finding, characters) = House.Only(run);
        finding.Rule.Should().Be(rule);
        characters.Should().Be(marked);
    }

    [Fact]
    public void A_bore_larger_than_the_pipe_is_one_finding()
    {
        var run = House.Check(House.Base.Edit(House.Girth, "  outside-diameter: 323.9 mm", "  outside-diameter: 25.4 mm"));
        var (finding, marked) = House.Only(run);
        finding.Rule.Should().Be("wrong-value");
        marked.Should().Be("25.4 mm");
    }

    [Fact]
    public void A_library_that_is_a_folder_is_one_finding()
    {
        using var folder = OnDisk();
        Directory.CreateDirectory(folder.At("dir.equipment.yaml"));
        folder.With(House.Floor, Named("dir.equipment.yaml"));
        Reported(folder, "library-not-found", "dir.equipment.yaml", "is a folder, not a file");
    }

    [Fact]
    public void A_library_that_is_a_ring_of_links_is_one_finding()
    {
        if (OperatingSystem.IsWindows()) return;
        using var folder = OnDisk();
        folder.WithLink("a.equipment.yaml", folder.At("b.equipment.yaml")).WithLink("b.equipment.yaml", folder.At("a.equipment.yaml"));
        folder.With(House.Floor, Named("a.equipment.yaml"));
        Reported(folder, "library-not-found", "a.equipment.yaml", "cannot be read");
    }

    [Fact]
    public void A_library_behind_a_link_that_leads_out_is_one_finding()
    {
        if (OperatingSystem.IsWindows()) return;
        using var elsewhere = new TemporaryFolder().With("secret.equipment.yaml", FixtureReader.Base[House.Pool]);
        using var folder = OnDisk();
        folder.WithLink("linked.equipment.yaml", elsewhere.At("secret.equipment.yaml"));
        folder.With(House.Floor, Named("linked.equipment.yaml"));
        Reported(folder, "library-outside-workspace", "linked.equipment.yaml", "lies outside the workspace");
    }

    [Theory]
    [InlineData(LookupFault.Unreadable, "cannot be read")]
    [InlineData(LookupFault.TooLarge, "is too large to be read")]
    [InlineData(LookupFault.NotText, "is not a text in UTF-8 or UTF-16")]
    internal void A_library_that_cannot_be_read_is_one_finding(LookupFault fault, string says)
    {
        var store = House.Base.With(House.Floor, Named("bad.equipment.yaml")).With("bad.equipment.yaml", fault);
        var snapshot = Snapshot.Open(store, WorkspaceOptions.For(FixtureRun.Day));
        var (finding, marked) = House.Only(Checker.Check(snapshot, [House.Floor], 1, CancellationToken.None));
        finding.Message.Should().Contain(says);
        marked.Should().Be("bad.equipment.yaml");
    }

    private static string Named(string library) => FixtureReader.Base[House.Floor].Replace("[pool.equipment.yaml]", $"[{library}]", StringComparison.Ordinal);

    private static TemporaryFolder OnDisk() => FixtureReader.Base.Aggregate(new TemporaryFolder(), (folder, file) => folder.With(file.Key, file.Value));

    private static void Reported(TemporaryFolder folder, string rule, string marked, string says)
    {
        var snapshot = Snapshot.Open(new DiskStore(folder.Path), WorkspaceOptions.For(FixtureRun.Day));
        var (finding, characters) = House.Only(Checker.Check(snapshot, [House.Floor], 1, CancellationToken.None));
        finding.Rule.Should().Be(rule);
        finding.Message.Should().Contain(says);
        characters.Should().Be(marked);
    }
}
