using System.Globalization;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>One line of Data/worst-cases.csv: an examination of <see cref="GeneratedExaminations"/>, what the search found and what the brute force did.</summary>
internal sealed record WorstCaseRow(int Number, double Searched, bool SearchedComplete, double Brute, bool BruteComplete, int Cases)
{
    public const string Heads = "number,searched-percent,searched-complete,brute-percent,brute-complete,cases";

    public static WorstCaseRow Of(int number, Fineness fineness)
    {
        var examination = GeneratedExaminations.Of(number);
        var searched = new Study(examination).Coverage;
        if (searched.NotComputed is { } reason) throw new InvalidOperationException($"Examination {number}: {reason}");
        var brute = WorstCaseBruteForce.Of(examination, fineness);
        return new WorstCaseRow(number, searched.Result.Volume.Percent, searched.Result.IsComplete, brute.Volume, brute.IsComplete, brute.Cases);
    }

    public static WorstCaseRow Parse(string line)
    {
        var cells = line.Split(',');
        return new WorstCaseRow(
            int.Parse(cells[0], CultureInfo.InvariantCulture), double.Parse(cells[1], CultureInfo.InvariantCulture), bool.Parse(cells[2]),
            double.Parse(cells[3], CultureInfo.InvariantCulture), bool.Parse(cells[4]), int.Parse(cells[5], CultureInfo.InvariantCulture));
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Number},{Searched:F4},{SearchedComplete},{Brute:F4},{BruteComplete},{Cases}");
}
