using System.Globalization;
using System.Text;

namespace TechLint.Tests.Validation;

/// <summary>The text of <c>docs/validation.md</c> from a run's checks. Digits follow each tolerance, so that the same code gives the same bytes.</summary>
internal static class ValidationPage
{
    public static string Of(IReadOnlyCollection<Check> checks, string disagreements)
    {
        var text = new StringBuilder();
        text.Append("# Validation\n\n");
        text.Append("What TechLint computes, held against values from outside its code. This page is written by the test run: every line below is a comparison that\n");
        text.Append("`tests/Validation` makes and that must hold. Renew it with `dotnet run -c Release --project tests/Tools -- validation`; a test fails when it is stale.\n\n");
        text.Append("The basis says what the expected value rests on: **published** (seen in the source named), **computed** (worked out by an independent method: another\n");
        text.Append("program, a numerical optimiser, a geometry library, brute force, theory integrated numerically, a wave simulation), **memory** (believed; to be confirmed\n");
        text.Append("against a bought copy) or **common practice**.\n\n");
        Summary(text, checks);
        text.Append(disagreements.ReplaceLineEndings("\n").Trim()).Append("\n\n");
        foreach (var topic in checks.GroupBy(check => check.Topic, StringComparer.Ordinal).OrderBy(topic => topic.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"## {topic.Key}\n\n");
            text.Append("| quantity | unit | expected | got | difference | tolerance | basis | source |\n|---|---|---:|---:|---:|---:|---|---|\n");
            foreach (var check in topic.OrderBy(check => check.Quantity, StringComparer.Ordinal)) Line(text, check);
            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static void Summary(StringBuilder text, IReadOnlyCollection<Check> checks)
    {
        string[] bases = [Checks.Published, Checks.Computed, Checks.Memory, Checks.CommonPractice];
        int Count(IEnumerable<Check> some, string basis) => some.Count(check => string.Equals(check.Basis, basis, StringComparison.Ordinal));
        text.Append(CultureInfo.InvariantCulture, $"**{checks.Count} checks**: {string.Join(", ", bases.Select(basis => $"{Count(checks, basis)} {basis}"))}.\n\n");
        text.Append("| topic | checks | published | computed | memory | common practice |\n|---|---:|---:|---:|---:|---:|\n");
        foreach (var topic in checks.GroupBy(check => check.Topic, StringComparer.Ordinal).OrderBy(topic => topic.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {topic.Key} | {topic.Count()} | {string.Join(" | ", bases.Select(basis => Count(topic, basis)))} |\n");
        }

        text.Append('\n');
    }

    private static void Line(StringBuilder text, Check check)
    {
        if (double.IsNaN(check.Expected))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Cell(check.Quantity)} | {check.Unit} | none | none | – | – | {check.Basis} | {Cell(check.Source)} |\n");
            return;
        }

        var digits = Digits(check);
        string Number(double value) => (Math.Round(value, digits) + 0.0).ToString("F" + digits, CultureInfo.InvariantCulture);
        text.Append(CultureInfo.InvariantCulture, $"| {Cell(check.Quantity)} | {check.Unit} | {Number(check.Expected)} | {Number(check.Got)} | ");
        var difference = Math.Round(check.Got, digits) - Math.Round(check.Expected, digits);
        var tolerance = check.Tolerance == 0 ? "exact" : check.Tolerance.ToString("G3", CultureInfo.InvariantCulture);
        text.Append(CultureInfo.InvariantCulture, $"{Number(difference)} | {tolerance} | {check.Basis} | {Cell(check.Source)} |\n");
    }

    /// <summary>One digit beyond the tolerance's first.</summary>
    private static int Digits(Check check) =>
        check.Tolerance > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(check.Tolerance)), 0, 10) : 0;

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Trim(' ', ',');
}
