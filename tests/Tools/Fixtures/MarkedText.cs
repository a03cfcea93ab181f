using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace TechLint.Tests.Tools.Fixtures;

/// <summary>Parts lines of text from the marks below them. A mark speaks of the nearest line of text above it.</summary>
internal sealed partial class MarkedText(string file, int shift)
{
    private readonly ImmutableArray<ExpectedFinding>.Builder expected = ImmutableArray.CreateBuilder<ExpectedFinding>();
    private readonly Stack<(string Rule, string Fragment, int Line, int Column)> open = new();

    /// <summary>The findings marked so far.</summary>
    public ImmutableArray<ExpectedFinding> Expected => open.Count == 0
        ? expected.ToImmutable()
        : throw new FixtureException($"{file}: a mark '^...' is never closed by '...^'");

    /// <summary>Reads a line as a mark; false where it is none.</summary>
    /// <param name="line">With its <c>#</c> in the first column.</param>
    /// <param name="above">The 0-based line of text that it speaks of.</param>
    public bool Read(string line, int above)
    {
        if (WholeFile().Match(line) is { Success: true } whole)
        {
            expected.Add(new(file, whole.Groups["rule"].Value, 0, 0, 0, 0, whole.Groups["fragment"].Value));
            return true;
        }

        if (Mark().Match(line) is not { Success: true } mark) return false;
        var (text, rule, fragment) = (mark.Groups["mark"].Value, mark.Groups["rule"].Value, mark.Groups["fragment"].Value);
        var column = mark.Groups["mark"].Index - shift;
        switch (text)
        {
            case "^...":
                open.Push((rule, fragment, above, column));
                break;
            case "...^":
                if (!open.TryPop(out var start)) throw new FixtureException($"{file}: a mark '...^' closes none");
                expected.Add(new(file, start.Rule, start.Line, start.Column, above, column + text.Length, start.Fragment));
                break;
            case "|":
                expected.Add(new(file, rule, above, column, above, column, fragment));
                break;
            default:
                expected.Add(new(file, rule, above, column, above, column + text.Length, fragment));
                break;
        }

        return true;
    }

    [GeneratedRegex(@"^#! (?<rule>[a-z0-9-]+): (?<fragment>.+)$")]
    private static partial Regex WholeFile();

    [GeneratedRegex(@"^#\s*(?<mark>\^\.\.\.|\.\.\.\^|\^+|\|)(?:\s+(?<rule>[a-z0-9-]+): (?<fragment>.+))?$")]
    private static partial Regex Mark();
}

/// <summary>A fixture that does not keep to its format.</summary>
internal sealed class FixtureException(string message) : Exception(message);
