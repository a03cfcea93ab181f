using System.Globalization;
using TechLint.Engine;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports.Compute;

/// <summary>
/// The amplitude map of a beam as comma-separated values: one line of column names with units, then a line for each place, rows of z from the outer surface, y across
/// the weld. Setup, beam, law and wall stand on every line, so that lines of several maps can be put together.
/// </summary>
public static class FieldCsvReport
{
    /// <summary>Column names; amplitude is pulse-echo, relative to the map's greatest.</summary>
    public const string Header = "y (mm),z (mm),pulse-echo amplitude (dB relative to maximum),setup,beam,law (deg),thickness (mm)";

    public static void Write(TextWriter output, ComputedField field)
    {
        var map = field.Map;
        output.Write(Header);
        output.Write('\n');
        var law = map.Law is { } angle ? Text(angle.Degrees, 4) : "all";
        var tail = $",{field.Setup},{map.Beam},{law},{Text(field.Thickness.Millimetres, 4)}\n";
        for (var row = 0; row < map.Z.Length; row++)
        {
            for (var column = 0; column < map.Y.Length; column++)
            {
                output.Write(Text(map.Y[column].Millimetres, 4));
                output.Write(',');
                output.Write(Text(map.Z[row].Millimetres, 4));
                output.Write(',');
                output.Write(Text(map.Levels[(row * map.Y.Length) + column].Decibels, 2));
                output.Write(tail);
            }
        }
    }

    private static string Text(double value, int digits) => Digits.Rounded(value, digits) is { } rounded ? Digits.Text(rounded) : value.ToString(CultureInfo.InvariantCulture);
}
