using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>
/// The search for the worst case against every combination of finely cut ranges: no worse case missed by more than 0.5 % of coverage, the project's own limit; for what a
/// verdict searches and for drifts as well. Ten examinations in every run; a hundred, cut finer, are run offline
/// (<c>dotnet run -c Release --project tests/Tools -- worst-cases</c>) and their results kept in Data/worst-cases.csv.
/// </summary>
public sealed class WorstCaseTests
{
    private const double Tolerance = 0.5;

    /// <summary>Of the kept figures: they have four digits.</summary>
    private const double Rounding = 1e-4;

    private static readonly Lazy<WorstCaseRow[]> Kept = new(() =>
        [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "worst-cases.csv")).Skip(1).Select(WorstCaseRow.Parse)]);

    public static TheoryData<int> Ten => [.. Enumerable.Range(0, 10)];

    [Theory]
    [MemberData(nameof(Ten))]
    public void No_worse_case_is_missed(int number) => Holds(WorstCaseRow.Of(number, withDrifts: false, Fineness.Quick));

    [Theory]
    [MemberData(nameof(Ten))]
    public void No_worse_case_is_missed_over_drifts(int number) => Holds(WorstCaseRow.Of(number, withDrifts: true, Fineness.QuickOverDrifts));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void None_was_missed_in_a_hundred_examinations(bool withDrifts)
    {
        var rows = Kept.Value.Where(row => row.WithDrifts == withDrifts).ToArray();
        rows.Select(row => row.Number).Should().Equal(Enumerable.Range(0, 100));
        foreach (var row in rows) Holds(row);
        rows.Count(row => row.Brute is > 90 and < 100).Should().BeGreaterThan(10, "what is all or nothing shows nothing");
        rows.Sum(row => row.Cases).Should().BeGreaterThan(20_000);
        Checks.Record(
            "worst case", $"greatest miss of the search in a hundred examinations, over range and tolerance{(withDrifts ? ", speeds and misalignment" : "")}", 0,
            Math.Max(0, rows.Max(row => row.Searched - row.Brute)), Tolerance, "% of the volume", "every combination of finely cut ranges, case by case", Checks.Computed);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_kept_results_are_those_of_this_code(bool withDrifts)
    {
        foreach (var kept in Kept.Value.Where(row => row.WithDrifts == withDrifts && row.Number % 7 == 0))
        {
            var searched = WorstCaseRow.SearchedOf(kept.Number, withDrifts).Result;
            searched.Volume.Percent.Should().BeApproximately(kept.Searched, Rounding, $"of examination {kept.Number}, else run tests/Tools worst-cases again");
            searched.IsComplete.Should().Be(kept.SearchedComplete);
        }
    }

    private static void Holds(WorstCaseRow row)
    {
        (row.Searched - row.Brute).Should().BeLessThanOrEqualTo(Tolerance, $"of examination {row.Number}");
        if (!row.BruteComplete) row.SearchedComplete.Should().BeFalse($"examination {row.Number} is not complete everywhere");
    }
}
