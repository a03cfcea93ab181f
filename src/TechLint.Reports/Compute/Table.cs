namespace TechLint.Reports.Compute;

/// <summary>Columns of figures, each as wide as its widest entry and flush right.</summary>
internal sealed class Table(params string[] heads)
{
    private readonly List<string[]> rows = [heads];

    public void Add(params string[] row) => rows.Add(row);

    public void Write(TextWriter output, string indent)
    {
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            output.Write(indent + string.Join("  ", row.Select((entry, column) => entry.PadLeft(widths[column]))).TrimEnd() + "\n");
        }
    }
}
