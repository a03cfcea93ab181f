using System.Globalization;
using TechLint.Engine;
using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Syntax;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports;

/// <summary>
/// A run for people, in the GNU form that editors and terminals know: one finding a line, what it rests on indented below.
/// Waived and baselined findings are counted in the summary only.
/// </summary>
/// <param name="folder">What to put before each file so that it can be opened from where the reader stands: empty, or with a slash at its end.</param>
/// <param name="color">Marks the severity for a terminal; the words are the same without.</param>
public sealed class TextReport(TextWriter output, string folder = "", bool color = false)
{
    private const string Indent = "    ";

    /// <summary>The findings; nothing where there are none.</summary>
    public void WriteFindings(CheckRun run)
    {
        foreach (var item in run.Findings)
        {
            if (item.Counts) Write(run, item.Finding);
        }
    }

    /// <summary>One line: what was looked at, as of which day, with what result, and whatever made the result milder.</summary>
    public void WriteSummary(CheckRun run)
    {
        var summary = run.Summary;
        var parts = new List<string>();
        Add(parts, summary.Errors, "error", "errors");
        Add(parts, summary.Warnings, "warning", "warnings");
        Add(parts, summary.Notes, "note", "notes");
        if (parts.Count == 0) parts.Add("no findings");
        Add(parts, summary.NotChecked, "thing not checked", "things not checked");
        Add(parts, summary.Waived, "waived", "waived");
        Add(parts, summary.Baselined, "in the baseline", "in the baseline");
        Add(parts, summary.LoweredBySettings, "lowered by settings", "lowered by settings");
        Add(parts, summary.Excluded, "file excluded by settings", "files excluded by settings");
        Line($"{Count(summary.Files, "file", "files")} as of {run.AsOf.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: {string.Join(", ", parts)}");
    }

    internal static string BasisText(Basis basis) => basis switch
    {
        Basis.Published => "published",
        Basis.Memory => "from memory",
        Basis.CommonPractice => "common practice",
        _ => "owner's requirement",
    };

    private void Write(CheckRun run, Finding finding)
    {
        Line($"{Where(run, finding.File, finding.Span)}: {Severity(finding.Severity)}: {OneLine(finding.Message)} [{finding.Rule}]");
        var untold = finding.Evidence.Where(evidence => !IsTold(finding, evidence)).Select(evidence => $"{evidence.Name} {Value(evidence)}").ToList();
        if (untold.Count > 0) Line(Indent + OneLine(string.Join(", ", untold)));
        foreach (var detail in finding.Detail) Line(Indent + OneLine(detail));
        if (finding.Requirement is { } citation) Line($"{Indent}{citation.Set}: {OneLine(citation.Source)} ({BasisText(citation.Basis)})");
        foreach (var related in finding.Related)
        {
            Line($"{Indent}{Where(run, related.File, related.Span)}: {OneLine(related.Message)}");
        }
    }

    // Every number a finding rests on is told, but none twice.
    private static bool IsTold(Finding finding, Evidence evidence)
    {
        var value = Value(evidence);
        return Holds(finding.Message, value) || finding.Detail.Any(detail => Holds(detail, value));
    }

    private static bool Holds(string text, string value)
    {
        if (value.Length == 0) return true;
        for (var at = text.IndexOf(value, StringComparison.Ordinal); at >= 0; at = text.IndexOf(value, at + 1, StringComparison.Ordinal))
        {
            var behind = at + value.Length;
            var startsHere = at == 0 || !(char.IsLetterOrDigit(text[at - 1]) || text[at - 1] is '.' or '-');
            var endsHere = behind == text.Length || !char.IsLetterOrDigit(text[behind])
                && !(text[behind] == '.' && behind + 1 < text.Length && char.IsAsciiDigit(text[behind + 1]));
            if (startsHere && endsHere) return true;
        }

        return false;
    }

    private static string Value(Evidence evidence)
    {
        var value = evidence.Number is { } number ? Digits.Text(number) : evidence.Text ?? "";
        return evidence.Unit.Length == 0 ? value : value + " " + evidence.Unit;
    }

    private string Where(CheckRun run, string file, TextSpan span)
    {
        var start = Position.Of(run.Sources.GetValueOrDefault(file), span).Start;
        return string.Create(CultureInfo.InvariantCulture, $"{OneLine(folder + file)}:{start.Line}:{start.Column}");
    }

    private string Severity(Severity severity)
    {
        var name = JsonReport.Name(severity);
        if (!color) return name;
        var code = severity switch
        {
            Rules.Findings.Severity.Error => "31",
            Rules.Findings.Severity.Warning => "33",
            _ => "36",
        };
        return $"\u001b[1;{code}m{name}\u001b[0m";
    }

    // A name or value quoted from a file must neither break the line nor steer the terminal.
    private static string OneLine(string text) => text.Any(IsUnfit) ? string.Concat(text.Select(c => IsUnfit(c) ? '\uFFFD' : c)) : text;

    private static bool IsUnfit(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private static void Add(List<string> parts, int count, string one, string many)
    {
        if (count > 0) parts.Add(Count(count, one, many));
    }

    private static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    private void Line(string text)
    {
        output.Write(text);
        output.Write('\n');
    }
}
