using System.Globalization;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>One line of Data/worst-cases.csv: an examination of <see cref="GeneratedExaminations"/>, over range and positioning tolerance or over drifts as well, what
/// the search found and what the brute force did.</summary>
internal sealed record WorstCaseRow(int Number, bool WithDrifts, double Searched, bool SearchedComplete, double Brute, bool BruteComplete, int Cases)
{
    public const string Heads = "number,with-drifts,searched-percent,searched-complete,brute-percent,brute-complete,cases";

    public static WorstCaseRow Of(int number, bool withDrifts, Fineness fineness)
    {
        var examination = GeneratedExaminations.Of(number);
        var searched = SearchedOf(number, withDrifts);
        if (searched.NotComputed is { } reason) throw new InvalidOperationException($"Examination {number}: {reason}");
        var range = withDrifts ? SearchRange.WithDrifts(examination, DriftTolerance.Of(examination).Speeds) : SearchRange.Of(examination);
        var brute = WorstCaseBruteForce.Of(examination, range, fineness);
        return new WorstCaseRow(
            number, withDrifts, searched.Result.Volume.Percent, searched.Result.IsComplete, brute.Volume, brute.IsComplete, brute.Cases);
    }

    public static WorstCoverage SearchedOf(int number, bool withDrifts)
    {
        var study = new Study(GeneratedExaminations.Of(number));
        return withDrifts ? study.CoverageWithDrifts : study.Coverage;
    }

    public static WorstCaseRow Parse(string line)
    {
        var cells = line.Split(',');
        return new WorstCaseRow(
            int.Parse(cells[0], CultureInfo.InvariantCulture), bool.Parse(cells[1]), double.Parse(cells[2], CultureInfo.InvariantCulture),
            bool.Parse(cells[3]), double.Parse(cells[4], CultureInfo.InvariantCulture), bool.Parse(cells[5]), int.Parse(cells[6], CultureInfo.InvariantCulture));
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Number},{WithDrifts},{Searched:F4},{SearchedComplete},{Brute:F4},{BruteComplete},{Cases}");
}
