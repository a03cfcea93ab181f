using System.Globalization;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Reports;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Tests.Unit.Rules;
using Xunit;

namespace TechLint.Tests.Unit.Engine;

public sealed class CheckerTests
{
    /// <summary>Findings of several families in several files.</summary>
    private static TextStore Flawed => House.Base.WithSpare()
        .Edit(House.Floor, "  joint: butt", "  joint: but")
        .Edit(House.Girth, "  outside-diameter: 323.9 mm", "  outside-diameter: 273.1 mm")
        .Edit(House.Girth, "      increment: 1 mm", "      increment: 1")
        .With("again.technique.yaml", "technique: GM-3\n").With("more.technique.yaml", "title: x\n");

    [Fact]
    public void The_same_bytes_come_from_one_thread_and_from_four()
    {
        var one = Json(House.Check(Flawed, jobs: 1));
        for (var i = 0; i < 3; i++) Json(House.Check(Flawed, jobs: 4)).Should().Be(one);
    }

    [Fact]
    public void Findings_come_by_file_place_and_rule()
    {
        var run = House.Check(Flawed, jobs: 4);
        var keys = run.Findings.Select(found => (found.Finding.File, found.Finding.Span.Start, found.Finding.Rule)).ToArray();
        keys.Length.Should().BeGreaterThan(5);
        keys.Should().Equal(keys.OrderBy(key => key.File, StringComparer.Ordinal).ThenBy(key => key.Start).ThenBy(key => key.Rule, StringComparer.Ordinal));
    }

    [Fact]
    public void One_failing_rule_is_one_finding_and_the_others_go_on()
    {
        var store = House.Base.WithSpare();
        var snapshot = Snapshot.Open(store, WorkspaceOptions.For(FixtureRun.Day));
        var run = Checker.Check(snapshot, [House.Floor], 1, [new Failing(), .. RuleRegistry.OfTechniques], CancellationToken.None);
        run.Findings.Select(found => found.Finding.Rule).Should().Equal("internal-error", "unused-definition");
        Json(run).Should().NotContain(Failing.Secret, "what a failure says may hold anything");
    }

    [Fact]
    public void An_open_text_takes_the_place_of_the_file_and_gives_it_back()
    {
        var snapshot = Snapshot.Open(House.Base, WorkspaceOptions.For(FixtureRun.Day));
        var open = snapshot.With(House.Floor, new SourceText(House.Floor, House.Base.WithSpare().Files[House.Floor].Source!.Text));
        House.Check(open).Findings.Should().ContainSingle();
        House.Check(snapshot).Findings.Should().BeEmpty("a snapshot does not change");
        House.Check(open.With(House.Floor, null)).Findings.Should().BeEmpty();
    }

    [Fact]
    public void An_edit_to_a_library_is_seen_by_the_techniques_that_use_it()
    {
        var snapshot = Snapshot.Open(House.Base, WorkspaceOptions.For(FixtureRun.Day));
        snapshot.DependantsOf(House.Pool).Should().Equal(House.Floor, House.Girth);
        var text = House.Base.Edit(House.Pool, "{id: wheel-12, resolution", "{id: wheel-13, resolution").Files[House.Pool].Source!;
        var edited = House.Check(snapshot.With(House.Pool, text));
        edited.Findings.Where(found => found.Finding.Rule == "unknown-reference").Select(found => found.Finding.File).Distinct()
            .Should().Contain([House.Floor, House.Girth]);
    }

    [Fact]
    public void A_file_is_read_anew_only_when_asked()
    {
        var store = new Changing(House.Base);
        var snapshot = Snapshot.Open(store, WorkspaceOptions.For(FixtureRun.Day));
        House.Check(snapshot).Findings.Should().BeEmpty();
        store.Now = House.Base.WithSpare();
        House.Check(snapshot).Findings.Should().BeEmpty();
        House.Check(snapshot.Refreshed([House.Girth])).Findings.Should().BeEmpty();
        House.Check(snapshot.Refreshed([House.Floor])).Findings.Should().ContainSingle();
        House.Check(snapshot.Refreshed([])).Findings.Should().ContainSingle();
    }

    private static string Json(CheckRun run)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        JsonReport.Write(writer, run, new ToolInfo("techlint", "0.1.0"));
        return writer.ToString();
    }

    private sealed class Failing : TechniqueRule
    {
        public const string Secret = "what the machine said";

        public override RuleDescription Description { get; } = new("always-fails", RuleFamily.Run, Severity.Error, "", "", "");

        public override void Check(TechniqueContext context) => throw new InvalidOperationException(Secret);
    }

    private sealed class Changing(TextStore now) : IFileStore
    {
        public TextStore Now { get; set; } = now;

        public FileText Read(string path) => Now.Read(path);

        public IReadOnlyList<string> List() => Now.List();
    }
}
