using System.CommandLine;
using System.Globalization;
using TechLint.Rules.Findings;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Cli;

internal enum ReportFormat { Text, Json, Sarif }

/// <summary>Options as the commands share them. Each says in plain words what it takes.</summary>
internal static class Options
{
    public static Option<string> Text(string name, string helpName, string description) => new(name) { HelpName = helpName, Description = description };

    public static Option<T?> Choice<T>(string name, string description, params (string Name, T Value)[] choices) where T : struct =>
        Read<T>(
            name, string.Join('|', choices.Select(choice => choice.Name)), description,
            text => choices.Where(choice => string.Equals(choice.Name, text, StringComparison.Ordinal)).Select(choice => (true, choice.Value)).FirstOrDefault(),
            _ => "takes " + string.Join(", ", choices.Select(choice => choice.Name)));

    public static Option<Severity?> FailOn() => Choice(
        "--fail-on", "The mildest severity that gives exit status 1 [default: error]",
        ("error", Severity.Error), ("warning", Severity.Warning), ("note", Severity.Note));

    public static Option<DateOnly?> Date(string name, string description) => Read<DateOnly>(
        name, "DATE", description,
        text => (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date), date),
        _ => "takes a day as 2026-11-24");

    public static Option<int?> Jobs() => Read<int>(
        "--jobs", "N", "How many files to work on at once [default: one a processor]",
        text => (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= 1024, count),
        _ => "takes a whole number from 1 to 1024");

    public static Option<Length?> Length(string name, string description) => Read<Length>(
        name, "LENGTH", description,
        text => QuantityParser.TryParse(text, out var quantity, out var _) == QuantityFault.None && quantity is { Kind: QuantityKind.Length, Value: > 0 }
            ? (true, new Length(quantity.InBase))
            : (false, default),
        text => QuantityParser.TryParse(text, out var quantity, out var _) switch
        {
            QuantityFault.NoUnit => $"needs a unit: {text.Trim()} mm or {text.Trim()} in",
            QuantityFault.DecimalComma => "takes a point, not a comma, before decimals, and a unit, as 12.7 mm",
            QuantityFault.None when quantity.Kind == QuantityKind.Length => "takes a length greater than zero",
            _ => "takes a length with its unit, as 25 mm, 1.25 in or 1 1/4 in",
        });

    public static Option<LawChoice?> Law(string name, string description) => Read<LawChoice>(
        name, "ANGLE|all", description,
        text => string.Equals(text, "all", StringComparison.Ordinal) ? (true, new LawChoice(null, All: true))
            : double.TryParse(text.EndsWith("deg", StringComparison.Ordinal) ? text[..^3] : text, NumberStyles.Float, CultureInfo.InvariantCulture, out var degrees)
                && double.IsFinite(degrees) ? (true, new LawChoice(new Angle(degrees), All: false)) : (false, default),
        _ => "takes an angle in degrees, as 55, or all");

    private static Option<T?> Read<T>(
        string name, string helpName, string description, Func<string, (bool Ok, T Value)> read, Func<string, string> expected) where T : struct =>
        new(name)
        {
            HelpName = helpName,
            Description = description,
            Arity = ArgumentArity.ExactlyOne,
            CustomParser = result =>
            {
                var text = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
                var (ok, value) = read(text);
                if (!ok) result.AddError($"{name} {expected(text)}, not '{text}'");
                return value;
            },
        };
}
