using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// One row of Data/check-values.csv: a value from outside, the inputs it belongs to, how many of its digits are to be trusted
/// and where it comes from. <c>basis</c> is published (seen in the source), memory (believed) or computed (worked out apart from
/// this code, by the formula or rule that the source names).
/// </summary>
internal sealed record CheckValue(
    string Id, string Topic, string Quantity, IReadOnlyDictionary<string, string> Inputs, double Value, string Unit, double Tolerance,
    string Source, string Basis)
{
    private static readonly Lazy<IReadOnlyDictionary<string, CheckValue>> Rows = new(Read);

    public double this[string input] => double.Parse(Inputs[input], CultureInfo.InvariantCulture);

    public static CheckValue Of(string id) => Rows.Value[id];

    private static readonly ConcurrentDictionary<string, bool> Used = new(StringComparer.Ordinal);

    /// <summary>Rows that nothing has been compared with yet.</summary>
    public static IEnumerable<string> Unused => Rows.Value.Keys.Where(id => !Used.ContainsKey(id));

    public static TheoryData<string> Ids(string topic) =>
        new(Rows.Value.Values.Where(row => string.Equals(row.Topic, topic, StringComparison.Ordinal)).Select(row => row.Id));

    public double Or(string input, double otherwise) => Inputs.ContainsKey(input) ? this[input] : otherwise;

    /// <summary>The computed value agrees within the row's own tolerance. NaN agrees only with a row that says so.</summary>
    public void Holds(double computed)
    {
        Used[Id] = true;
        Checks.Record(
            Topic.Replace('-', ' '), $"{Id}: {Quantity} ({string.Join(", ", Inputs.Select(pair => $"{pair.Key} {pair.Value}"))})", Value, computed, Tolerance, Unit,
            Source, Basis);
    }

    private static Dictionary<string, CheckValue> Read()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "check-values.csv"));
        var rows = new Dictionary<string, CheckValue>(StringComparer.Ordinal);
        foreach (var line in lines.Skip(1))
        {
            var cells = Split(line);
            var inputs = cells[3].Split(';').Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
            rows.Add(cells[0], new CheckValue(
                cells[0], cells[1], cells[2], inputs, Number(cells[4]), cells[5], Number(cells[6]), $"{cells[7]}, {cells[8]}", cells[9]));
        }

        return rows;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>Cells of a line of comma-separated values; a quoted cell may hold commas and doubled quotes.</summary>
    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var index = 0; index < line.Length; index++)
        {
            var c = line[index];
            if (c == '"' && quoted && index + 1 < line.Length && line[index + 1] == '"')
            {
                cell.Append(c);
                index++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
