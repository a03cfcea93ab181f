using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Rules.Findings;

namespace TechLint.Tests.Unit.Rules;

/// <summary>Short ways to change the fixtures' base and check it.</summary>
internal static class House
{
    public const string Floor = "floor.technique.yaml";
    public const string Girth = "girth.technique.yaml";
    public const string Pool = "pool.equipment.yaml";
    public const string Settings = "techlint.yaml";

    /// <summary>A reference that no beam uses: a finding that depends on nothing else.</summary>
    public const string Spare = "  - {id: spare, method: time-corrected-gain, block: block-10, reflectors: [sdh-2], level: 80 %, scanning-gain: 6 dB}\n";

    public static TextStore Base => FixtureRun.Base();

    public static TextStore WithSpare(this TextStore store) =>
        store.Edit(Floor, "scanning-gain: 6 dB}\n", "scanning-gain: 6 dB}\n" + Spare);

    public static TextStore Appended(this TextStore store, string path, string text) => store.With(path, store.Files[path].Source!.Text + text);

    public static CheckRun Check(IFileStore store, int jobs = 1, DateOnly? today = null)
    {
        var snapshot = Snapshot.Open(store, WorkspaceOptions.For(today ?? FixtureRun.Day));
        return Check(snapshot, jobs);
    }

    public static CheckRun Check(Snapshot snapshot, int jobs = 1) => Checker.Check(snapshot, snapshot.Files, jobs, CancellationToken.None);

    /// <summary>The one finding of a run, and the text that it marks.</summary>
    public static (Finding Finding, string Marked) Only(CheckRun run)
    {
        var finding = run.Findings.Single().Finding;
        return (finding, Marked(run, finding));
    }

    public static string Marked(CheckRun run, Finding finding) => run.Sources[finding.File].Slice(finding.Span).ToString();
}
