using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Validation.WorstCases;

/// <summary>
/// The search for the worst case against every combination of finely cut ranges: no worse case missed by more than 0.5 % of coverage, the project's own limit. Ten
/// examinations in every run; a hundred, cut finer, are run offline (<c>dotnet run -c Release --project tests/Tools -- worst-cases</c>) and their results kept in
/// Data/worst-cases.csv.
/// </summary>
public sealed class WorstCaseTests
{
    private const double Tolerance = 0.5;

    /// <summary>Of the kept figures: they have four digits.</summary>
    private const double Rounding = 1e-4;

    private static readonly Lazy<WorstCaseRow[]> Kept = new(() =>
        [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "worst-cases.csv")).Skip(1).Select(WorstCaseRow.Parse)]);

    public static TheoryData<int> Ten => [.. Enumerable.Range(0, 10)];

    /// <summary>Others than the ten: one of each kind, cheap ones.</summary>
    public static TheoryData<int> Few => [12, 25, 37, 51, 76, 88];

    [Theory]
    [MemberData(nameof(Ten))]
    public void No_worse_case_is_missed(int number) => Holds(WorstCaseRow.Of(number, Fineness.Quick));

    [Fact]
    public void None_was_missed_in_a_hundred_examinations()
    {
        Kept.Value.Select(row => row.Number).Should().Equal(Enumerable.Range(0, 100));
        foreach (var row in Kept.Value) Holds(row);
        Kept.Value.Count(row => row.Brute is > 90 and < 100).Should().BeGreaterThan(10, "what is all or nothing shows nothing");
        Kept.Value.Sum(row => row.Cases).Should().BeGreaterThan(100_000);
    }

    [Theory]
    [MemberData(nameof(Few))]
    public void The_kept_results_are_those_of_this_code(int number)
    {
        var row = WorstCaseRow.Of(number, Fineness.Full);
        var kept = Kept.Value[number];
        row.Searched.Should().BeApproximately(kept.Searched, Rounding, "else run tests/Tools worst-cases again");
        row.Brute.Should().BeApproximately(kept.Brute, Rounding);
        row.Cases.Should().Be(kept.Cases);
    }

    private static void Holds(WorstCaseRow row)
    {
        (row.Searched - row.Brute).Should().BeLessThanOrEqualTo(Tolerance, $"of examination {row.Number}");
        if (!row.BruteComplete) row.SearchedComplete.Should().BeFalse($"examination {row.Number} is not complete everywhere");
    }
}
