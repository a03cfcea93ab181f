using System.Collections.Concurrent;
using FluentAssertions;

namespace TechLint.Tests.Validation;

/// <summary>One comparison of a computed value with one from outside the code.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Quantity">What is compared, with its inputs.</param>
/// <param name="Expected">From outside.</param>
/// <param name="Got">From the code. NaN where both say that there is none.</param>
/// <param name="Tolerance">How far they may differ.</param>
/// <param name="Unit">Of all three.</param>
/// <param name="Source">Where the expected value comes from: a document, or the method that worked it out apart from the code.</param>
/// <param name="Basis">published, computed, memory or common practice.</param>
internal sealed record Check(
    string Topic, string Quantity, double Expected, double Got, double Tolerance, string Unit, string Source, string Basis);

/// <summary>
/// Every outside check of a test run: asserts it and keeps it for <c>docs/validation.md</c>. A check that is made twice under one name is kept once,
/// with the value that is farther off.
/// </summary>
internal static class Checks
{
    public const string Published = "published";
    public const string Computed = "computed";
    public const string Memory = "memory";
    public const string CommonPractice = "common practice";

    /// <summary>Rounding of the last digit that a tolerance was written with.</summary>
    private const double Rounding = 1e-9;

    private static readonly ConcurrentDictionary<(string Topic, string Quantity), Check> Kept = new();

    public static IReadOnlyCollection<Check> All => [.. Kept.Values];

    /// <summary>The computed value agrees with the outside one within the tolerance. NaN agrees with NaN alone (there is no such value).</summary>
    public static void Record(
        string topic, string quantity, double expected, double got, double tolerance, string unit, string source, string basis, string because = "")
    {
        basis.Should().BeOneOf(Published, Computed, Memory, CommonPractice);
        var check = new Check(topic, quantity, expected, got, tolerance, unit, source, basis);
        Kept.AddOrUpdate((topic, quantity), check, (_, before) => Off(check) > Off(before) ? check : before);
        var words = $"{topic}, {quantity} is {expected:R} {unit} by {source} [{basis}]{because}";
        double.IsNaN(got).Should().Be(double.IsNaN(expected), words);
        if (double.IsNaN(expected)) return;
        Math.Abs(got - expected).Should().BeLessThanOrEqualTo(tolerance * (1 + Rounding), $"{words}, computed {got:R}");
    }

    private static double Off(Check check) => Math.Abs(check.Got - check.Expected);
}
