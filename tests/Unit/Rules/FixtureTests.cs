using FluentAssertions;
using FluentAssertions.Execution;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;
using TechLint.Tests.Tools.Fixtures;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>The rules held to their fixtures in <c>tests/Rules</c>: exactly the marked findings, at the very characters.</summary>
public sealed class FixtureTests
{
    public static TheoryData<string, string> RulesWithLineEnds()
    {
        var data = new TheoryData<string, string>();
        foreach (var rule in FixtureReader.All.Keys)
        {
            data.Add(rule, "LF");
            data.Add(rule, "CRLF");
        }

        return data;
    }

    public static TheoryData<string> Rules() => [.. FixtureReader.All.Keys];

    [Fact]
    public void Every_rule_has_a_fixture_and_every_fixture_a_rule() =>
        FixtureReader.All.Keys.Should().BeEquivalentTo(RuleRegistry.Names);

    [Fact]
    public void The_base_has_no_findings() =>
        FixtureRun.Marks(Checker.Check(
            Snapshot.Open(FixtureRun.Base(), WorkspaceOptions.For(FixtureRun.Day)), [.. FixtureReader.Base.Keys], 1, CancellationToken.None)).Should().BeEmpty();

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_fixture_shows_the_rule_at_work_and_silent(string rule)
    {
        var fixture = FixtureReader.All[rule];
        fixture.Prose.Should().NotBeEmpty();
        fixture.Section("Wrong")!.Cases.Should().NotBeEmpty().And.OnlyContain(one => one.Expected.Any(mark => mark.Rule == rule));
        fixture.Section("Right")!.Cases.Should().NotBeEmpty().And.OnlyContain(one => !one.Expected.Any());
        fixture.Section("Boundary").Should().NotBeNull("a fixture says what happens on the limit, or why there is none");
    }

    [Theory]
    [MemberData(nameof(RulesWithLineEnds))]
    public void Exactly_the_marked_findings_come_at_the_marked_characters(string rule, string lineEnds)
    {
        using var all = new AssertionScope();
        foreach (var one in FixtureReader.All[rule].Cases)
        {
            var found = FixtureRun.Marks(FixtureRun.Check(one, FixtureRun.SnapshotOf(one, lineEnds == "LF" ? "\n" : "\r\n")));
            found.Select(WithoutMessage).Should().BeEquivalentTo(one.Expected.Select(WithoutMessage), because: $"so {rule} marks them ({one})");
            foreach (var mark in one.Expected)
            {
                found.Where(finding => WithoutMessage(finding) == WithoutMessage(mark)).Should().Contain(
                    finding => finding.Fragment.Contains(mark.Fragment, StringComparison.Ordinal), because: $"so {rule} says ({one})");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_fix_leaves_a_file_that_parses_and_mends_its_finding(string rule)
    {
        using var all = new AssertionScope();
        foreach (var one in FixtureReader.All[rule].Cases.Where(one => one.Throwing is null))
        {
            var snapshot = FixtureRun.SnapshotOf(one, "\n");
            foreach (var finding in FixtureRun.Check(one, snapshot).Findings.Select(found => found.Finding))
            {
                foreach (var fix in finding.Fixes)
                {
                    var mended = Apply(snapshot, fix);
                    var left = FixtureRun.Check(one, mended).Findings.Where(found => found.Finding.File == finding.File).ToArray();
                    left.Should().NotContain(found => found.Finding.Rule == finding.Rule && found.Finding.At == finding.At, because: $"'{fix.Title}' mends it ({rule}, {one})");
                    left.Should().NotContain(found => found.Finding.Rule == "yaml-syntax", because: $"'{fix.Title}' leaves sound text ({rule}, {one})");
                }
            }
        }
    }

    private static Snapshot Apply(Snapshot snapshot, Fix fix) => fix.Edits.GroupBy(edit => edit.File).Aggregate(snapshot, (mended, edits) =>
    {
        var text = mended.TreeOf(edits.Key)!.Source.Text;
        foreach (var edit in edits.OrderByDescending(edit => edit.Span.Start)) text = text[..edit.Span.Start] + edit.NewText + text[edit.Span.End..];
        return mended.With(edits.Key, new SourceText(edits.Key, text));
    });

    private static ExpectedFinding WithoutMessage(ExpectedFinding mark) => mark with { Fragment = "" };
}
