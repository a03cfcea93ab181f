namespace TechLint.Engine;

/// <summary>Turns a snapshot into findings. Pure: the same snapshot and files give the same run on any thread count.</summary>
public static class Checker
{
    /// <param name="files">Relative paths of techniques, libraries, sets and settings to judge.</param>
    public static CheckRun Check(Snapshot snapshot, IReadOnlyCollection<string> files, int jobs, CancellationToken cancellation) =>
        throw new NotSupportedException();
}
