namespace TechLint.Engine;

/// <summary>File, line, column, rule, path, message: the same input gives the same order on every run and machine.</summary>
internal static class FindingOrder
{
    public static IEnumerable<CheckedFinding> Sort(IEnumerable<CheckedFinding> findings) => findings
        .OrderBy(found => found.Finding.File, StringComparer.Ordinal)
        .ThenBy(found => found.Finding.Span.Start)
        .ThenBy(found => found.Finding.Rule, StringComparer.Ordinal)
        .ThenBy(found => found.Finding.At, StringComparer.Ordinal)
        .ThenBy(found => found.Finding.Message, StringComparer.Ordinal);
}
