using TechLint.Engine;
using TechLint.Engine.Files;

namespace TechLint.Tests.Benchmarks;

internal static class InProcess
{
    private static readonly WorkspaceOptions Options = new(new DateOnly(2026, 11, 24), null, null, []);

    /// <summary>A workspace of which nothing has been read or worked out.</summary>
    public static Snapshot Fresh(string folder) => Snapshot.Open(new DiskStore(folder), Options);

    public static CheckRun Check(Snapshot snapshot, IReadOnlyCollection<string> files, int jobs = 1) =>
        Checker.Check(snapshot, files, jobs, CancellationToken.None);
}
